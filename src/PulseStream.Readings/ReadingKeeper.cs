namespace PulseStream.Readings;

/// <summary>Turns judged seconds into accepted readings and sittings, whoever has judged them.</summary>
/// <param name="options">Limits with their reasons.</param>
public sealed class ReadingKeeper(ReadingOptions options)
{
    private readonly SteadyValue steady = new(options);
    private readonly SittingKeeper sittings = new(options);

    /// <summary>Seconds for which the same whole percent has been held, the second told last among them; 0 where none is.</summary>
    public int SteadySeconds => steady.Seconds;

    /// <summary>Takes the next second.</summary>
    /// <param name="second">The second.</param>
    /// <param name="hasFinger">Whether something is in the clip.</param>
    /// <param name="observer">Told of it and of what follows from it, while this runs.</param>
    public void Take(in Second second, bool hasFinger, IReadingObserver observer)
    {
        ArgumentNullException.ThrowIfNull(observer);

        // Before the second is told: who hears of it may ask how long its value has held.
        var accepted = steady.Step(second);
        observer.OnSecond(second);
        if (accepted is not null)
        {
            observer.OnReading(accepted);
        }

        if (sittings.Step(second, hasFinger, accepted, steady) is { } sitting)
        {
            observer.OnSitting(sitting);
        }
    }

    /// <summary>Nothing follows: tells the last sitting.</summary>
    /// <param name="observer">Told of it.</param>
    public void Finish(IReadingObserver observer)
    {
        ArgumentNullException.ThrowIfNull(observer);
        if (sittings.Finish() is { } sitting)
        {
            observer.OnSitting(sitting);
        }
    }
}
