using PulseStream.Samples;

namespace PulseStream.Sources.Live;

/// <summary>What is said of an instrument whose clock is off.</summary>
internal static class ClockDrift
{
    // What crystals miss is far below.
    private const double SaidPercent = 0.5;

    /// <summary>The sentence; null where the rate of arrival is not known yet, or near enough.</summary>
    public static string? Words(string port, SampleRate stated, SampleTally tally) =>
        tally.ArrivalRateHz is { } hz && Math.Abs(hz - stated.Hz) > stated.Hz * SaidPercent / 100
            ? $"{port}: {hz:0.00} samples a second arrive by this computer's clock, the layout says {stated.Hz}; the session keeps the layout's rate."
            : null;
}
