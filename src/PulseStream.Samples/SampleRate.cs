namespace PulseStream.Samples;

/// <summary>The sample rate of a recording, and the only place that turns sample indices into seconds and back.</summary>
/// <param name="Hz">Samples a second, 25 to 1000.</param>
/// <exception cref="ArgumentOutOfRangeException">The rate is outside 25 to 1000 Hz or not a number.</exception>
public sealed record SampleRate(double Hz)
{
    /// <summary>The slowest rate that still carries the harmonics of a fast pulse, in Hz.</summary>
    public const double LowestHz = 25;

    /// <summary>The fastest rate accepted, in Hz.</summary>
    public const double HighestHz = 1000;

    // A second's first index is rounded up; this keeps 2.9999999999 from becoming 3 and then 4.
    private const double IndexSlack = 1e-6;

    /// <summary>Samples a second, 25 to 1000.</summary>
    public double Hz { get; } = Hz >= LowestHz && Hz <= HighestHz
        ? Hz
        : throw new ArgumentOutOfRangeException(nameof(Hz), Hz, "A sample rate lies between 25 and 1000 Hz.");

    /// <summary>Time of a sample since the recording's start, in seconds.</summary>
    /// <param name="index">Sample index, fractions allowed between samples.</param>
    public double SecondsAt(double index) => index / Hz;

    /// <summary>Index of the first sample at or after the start of a whole second.</summary>
    /// <param name="second">Whole seconds since the recording's start.</param>
    public long FirstIndexOf(long second) => (long)Math.Ceiling((second * Hz) - IndexSlack);

    /// <summary>The whole second in which a sample lies: <see cref="FirstIndexOf"/> of it is at or below the index.</summary>
    /// <param name="index">Sample index.</param>
    public long SecondOf(long index)
    {
        var second = (long)Math.Floor(index / Hz);
        return FirstIndexOf(second + 1) <= index ? second + 1 : second;
    }
}
