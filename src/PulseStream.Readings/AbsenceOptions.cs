namespace PulseStream.Readings;

/// <summary>Limits between a finger and none, each with its reason.</summary>
public sealed record AbsenceOptions
{
    /// <summary>Change of the light, as a logarithm, with which a finger has left: a finger takes most of the light away.</summary>
    public double OpenAirRise { get; init; } = 0.3;

    /// <summary>Swing of a second over the pulse that the finger would have in its light, root mean squares, below which nothing of it is left: a heart does not stop for a second.</summary>
    public double StoppedPulseShare { get; init; } = 0.1;

    /// <summary>The same below which it has gone where it stays so, though what is left flickers: of a whole beat a second shows nearly all, of a grip that changes a pulse two thirds are left.</summary>
    public double WeakPulseShare { get; init; } = 0.5;

    /// <summary>Seconds for which it has to stay so: a beat of 40 a minute begins in each two of them.</summary>
    public int StoppedPulseSeconds { get; init; } = 3;
}
