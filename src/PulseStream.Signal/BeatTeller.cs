using System.Runtime.Intrinsics;

namespace PulseStream.Signal;

/// <summary>Tells each beat once, with the interval since the one before, when no later window can move it.</summary>
internal sealed class BeatTeller(WindowRoom room, bool hasRed)
{
    // A beat is told once the next bins cannot move its steepest rise any more.
    private const double EmitDelaySeconds = 0.22;

    // Two rises closer than this are one beat seen in two windows; further apart than that, beats were missed between them.
    private const double ShortestIntervalSeconds = 0.2;
    private const double LongestIntervalSeconds = 3;

    // A beat reaches from before its front to before the next one's, in shares of the interval.
    private const double BeatBeforeShare = 0.3;
    private const double BeatAfterShare = 0.7;
    private readonly SignalDesign design = room.Design;
    private readonly BeatFinder finder = room.Finder;
    private readonly BeatShape shape = room.Shape;
    private readonly Beat[] beats = room.Beats;
    private double lastRiseIndex = double.NegativeInfinity;
    private int beatCount;

    /// <summary>Beats told with the second measured last.</summary>
    public ReadOnlySpan<Beat> Told => beats.AsSpan(0, beatCount);

    /// <summary>The next beat has no interval.</summary>
    public void Restart() => lastRiseIndex = double.NegativeInfinity;

    /// <summary>A second without a window tells none.</summary>
    public void Clear() => beatCount = 0;

    /// <summary>Tells the beats that were found and judged in a window.</summary>
    /// <param name="bins">The newest bins.</param>
    /// <param name="window">The window.</param>
    /// <param name="isPleth">Whether the unit of height is unknown.</param>
    public void Tell(SmoothedBins bins, ReadOnlySpan<double> window, bool isPleth)
    {
        beatCount = 0;
        var start = bins.NewestBin - (window.Length / 2) + 1;
        var rate = design.Rate.Hz;
        var newest = IndexOf(bins.NewestBin) - (EmitDelaySeconds * rate);
        for (var k = 0; k < finder.Count && beatCount < beats.Length; k++)
        {
            var index = IndexOf(start + finder.Rises[k]);
            if (index > newest || index < lastRiseIndex + (ShortestIntervalSeconds * rate) || (double.IsNegativeInfinity(lastRiseIndex) && k == 0))
            {
                continue;
            }

            var interval = (index - lastRiseIndex) / rate;
            beats[beatCount++] = new(
                index,
                interval < LongestIntervalSeconds ? interval : double.NaN,
                RatioOfBeat(window, k),
                Perfusion.PercentOf(shape.Heights[k], isPleth),
                Math.Max(0, shape.Agreements[k]));
            lastRiseIndex = index;
        }
    }

    private double IndexOf(double bin) => (bin * design.SamplesPerBin) + (0.5 * (design.SamplesPerBin - 1));

    private double RatioOfBeat(ReadOnlySpan<double> window, int k)
    {
        if (!hasRed)
        {
            return double.NaN;
        }

        var period = finder.Count > 1 ? finder.Rises[Math.Max(k, 1)] - finder.Rises[Math.Max(k, 1) - 1] : design.BinRateHz;
        var from = Math.Max(0, (int)(finder.Rises[k] - (BeatBeforeShare * period)));
        var to = Math.Min(window.Length / 2, (int)(finder.Rises[k] + (BeatAfterShare * period)));
        Vector128<double> products = default;
        for (var n = from; n < to; n++)
        {
            products += BloodCourse.TwoAt(window, 2 * n) * window[2 * n];
        }

        // i² and r i.
        return products[0] > 0 ? products[1] / products[0] : double.NaN;
    }
}
