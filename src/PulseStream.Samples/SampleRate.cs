namespace PulseStream.Samples;

/// <summary>The sample rate of a recording, and the only place that turns sample indices into seconds and back.</summary>
/// <param name="Hz">Samples a second, 25 to 1000, give or take what a clock may be off.</param>
/// <exception cref="ArgumentOutOfRangeException">The rate is outside 25 to 1000 Hz by more than a clock may be off, or not a number.</exception>
public sealed record SampleRate(double Hz)
{
    /// <summary>The slowest rate that an option or a layout may tell, in Hz: it still carries the harmonics of a fast pulse.</summary>
    public const double LowestHz = 25;

    /// <summary>The fastest rate that an option or a layout may tell, in Hz.</summary>
    public const double HighestHz = 1000;

    // The clock of a microcontroller without a crystal is off by 1 to 3 % over its temperatures (common practice), and a rate
    // that was measured has that in it. Nothing rests on 25 Hz to the letter: half of 24 Hz is still half as much again as the
    // 8 Hz up to which a pulse is read.
    private const double ClockShare = 0.04;

    // A second's first index is rounded up; this keeps 2.9999999999 from becoming 3 and then 4.
    private const double IndexSlack = 1e-6;

    /// <summary>The rates that a recording may have, for messages.</summary>
    public static string MeasuredRange { get; } = $"{LowestHz} to {HighestHz} Hz, give or take {100 * ClockShare} %";

    /// <summary>Samples a second, 25 to 1000, give or take what a clock may be off.</summary>
    public double Hz { get; } = IsMeasured(Hz)
        ? Hz
        : throw new ArgumentOutOfRangeException(nameof(Hz), Hz, $"A sample rate lies between {MeasuredRange}.");

    /// <summary>Whether a recording may have a rate by its own times or its header: the instrument's clock may be off the rate that it was built for.</summary>
    /// <param name="hz">Samples a second.</param>
    public static bool IsMeasured(double hz) => hz >= LowestHz * (1 - ClockShare) && hz <= HighestHz * (1 + ClockShare);

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
