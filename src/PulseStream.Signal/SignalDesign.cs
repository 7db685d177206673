using PulseStream.Samples;

namespace PulseStream.Signal;

/// <summary>Everything that is computed once for a sample rate and never changes; any number of streams may share one.</summary>
public sealed class SignalDesign
{
    private const double InnerRateHz = 50;
    private readonly Lazy<SlowBasis>[][] slow;
    private readonly Lazy<SlowBasis>[] slowOfSlowPulse;
    private readonly Lazy<Breathing>[] breathing;

    /// <summary>Designs filters and bases.</summary>
    /// <param name="rate">Sample rate of the recording.</param>
    /// <param name="options">Settings of the signal stage.</param>
    public SignalDesign(SampleRate rate, SignalOptions options)
    {
        Rate = rate;
        Options = options;
        SamplesPerBin = Math.Max(1, (int)Math.Floor(rate.Hz / InnerRateHz));
        BinRateHz = rate.Hz / SamplesPerBin;
        Kernel = new(options.FastestPulseHarmonicHz, BinRateHz);
        Curvature = new(Kernel, BinRateHz);
        slow = [Bases(options.SlowestPulseHz), Bases(options.SlowestFastPulseHz), Bases(options.SlowestRapidPulseHz)];
        slowOfSlowPulse = Bases(options.SlowestSlowPulseHz);
        breathing = [.. Bases(options.SlowestBreathingHz).Select(basis => new Lazy<Breathing>(() => new(basis.Value, BinRateHz)))];
    }

    /// <summary>Sample rate of the recording.</summary>
    public SampleRate Rate { get; }

    /// <summary>Settings of the signal stage.</summary>
    public SignalOptions Options { get; }

    /// <summary>How many samples are averaged into one bin; averaging lowers noise and costs a pulse nothing.</summary>
    public int SamplesPerBin { get; }

    /// <summary>Bins a second: 50 to 100, or the sample rate where that is below 100 Hz.</summary>
    public double BinRateHz { get; }

    internal SmoothingKernel Kernel { get; }

    internal Curvature Curvature { get; }

    internal int LongestWindowBins => WindowBins(Options.LongestWindowSeconds);

    internal SlowBasis SlowOfSlowPulse(int windowSeconds) => slowOfSlowPulse[windowSeconds].Value;

    internal Breathing BreathingOf(int windowSeconds) => breathing[windowSeconds].Value;

    internal SlowBasis SlowOf(int windowSeconds, SlowEdge edge = SlowEdge.OfAnyPulse) => slow[(int)edge][windowSeconds].Value;

    internal SlowEdge EdgeOf(double pulsePerMinute) =>
        pulsePerMinute >= Options.RapidPulsePerMinute ? SlowEdge.OfRapidPulse
        : pulsePerMinute >= Options.FastPulsePerMinute ? SlowEdge.OfFastPulse
        : SlowEdge.OfAnyPulse;

    /// <summary>Bins that a window yields: smoothing looks a tenth of a second both ways, so it is that much less than bins received.</summary>
    /// <param name="seconds">Length of the window, s.</param>
    internal int WindowBins(int seconds) => (int)(seconds * BinRateHz) - (2 * Kernel.Half) - 1;

    // Most recordings need a few of them, and each costs as much as measuring some seconds.
    private Lazy<SlowBasis>[] Bases(double slowestHz)
    {
        var bases = new Lazy<SlowBasis>[Options.LongestWindowSeconds + 1];
        for (var seconds = Options.ShortestWindowSeconds; seconds <= Options.LongestWindowSeconds; seconds++)
        {
            var length = WindowBins(seconds);
            bases[seconds] = new(() => new(length, slowestHz, BinRateHz));
        }

        return bases;
    }
}
