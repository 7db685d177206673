namespace PulseStream.Simulation.Blood;

/// <summary>Trough, top and mean of an even train of beats of one shape: what turns the train into a course from 0 to 1.</summary>
internal sealed class PulseRange
{
    // Fine enough that the extremes are met to 1e-6 of the height.
    private const int Steps = 4000;

    /// <summary>Measures the even train.</summary>
    /// <param name="secondWave">Height of the second wave over the first.</param>
    public PulseRange(double secondWave)
    {
        var train = Enumerable.Range(0, Steps).Select(i => EvenTrain(i / (double)Steps, secondWave)).ToArray();
        Trough = train.Min();
        Height = train.Max() - Trough;
        Mean = (train.Average() - Trough) / Height;
    }

    /// <summary>Lowest volume of the train.</summary>
    public double Trough { get; }

    /// <summary>Top less trough.</summary>
    public double Height { get; }

    /// <summary>Mean of the course from 0 to 1.</summary>
    public double Mean { get; }

    private static double EvenTrain(double phase, double secondWave) =>
        PulseShape.Volume(phase - 1, secondWave) + PulseShape.Volume(phase, secondWave) + PulseShape.Volume(phase + 1, secondWave);
}
