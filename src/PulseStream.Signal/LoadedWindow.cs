namespace PulseStream.Signal;

/// <summary>A window without its slow part, and what red and infrared tell in it; steady lines can be taken out of it.</summary>
/// <param name="room">Where it is loaded.</param>
internal sealed class LoadedWindow(WindowRoom room)
{
    // Breathing sways the light by a few hundredths, a tall pulse by itself where a second holds no whole beat; a slip goes on.
    private const double LargestMove = 0.05;
    private const double MovePulses = 3;
    private readonly SignalDesign design = room.Design;
    private readonly LineRemover lines = room.Lines;
    private int length;
    private int removed;
    private double loadedPower;

    /// <summary>Begins with the window; room for another one once it is not needed.</summary>
    public Span<double> Room => room.Pairs;

    /// <summary>Infrared and red in turn.</summary>
    public Span<double> Pairs => room.Pairs.AsSpan(0, 2 * length);

    /// <summary>What was taken away as slow.</summary>
    public SlowEdge Edge { get; private set; }

    /// <summary>Whether lines are taken away as what is added in counts, divided by the light as it was.</summary>
    public bool AreLinesAdded { get; private set; }

    /// <summary>White noise of a bin, without what was lines.</summary>
    public WhiteNoise Noise { get; private set; }

    /// <summary>Frequencies of the lines that were taken away, Hz, the strongest first.</summary>
    public ReadOnlySpan<double> RemovedHz => lines.RemovedHz;

    /// <summary>Loads a window and regresses red on infrared.</summary>
    /// <param name="bins">The newest bins.</param>
    /// <param name="seconds">Length of the window, s.</param>
    /// <param name="edge">What is taken away as slow.</param>
    public RatioFit Load(SmoothedBins bins, int seconds, SlowEdge edge)
    {
        var basis = design.SlowOf(seconds, edge);
        length = basis.Length;
        bins.CopyNewest(Pairs);
        basis.Remove(Pairs);
        lines.Restart(basis);
        AreLinesAdded = false;
        removed = basis.Count;
        Edge = edge;
        Noise = bins.NoiseOver(seconds);
        var fit = RatioRegression.Fit(Pairs, Noise, design.Kernel.NoiseGain, removed, seconds);
        loadedPower = PowerOfDisagreement(fit);
        return fit;
    }

    /// <summary>
    /// Regresses the curvature of red on that of infrared: of what is slower than the pulse there is hardly any in it. Of a jerk, and of
    /// what is faster than any pulse, there is the more: false where that is what was seen. False as well where the light itself has moved:
    /// a finger that slips keeps its beats' form, but not R.
    /// </summary>
    /// <param name="bins">The newest bins.</param>
    /// <param name="fit">What was told of the window itself.</param>
    /// <param name="bent">What its curvature tells.</param>
    public bool TryBend(SmoothedBins bins, in RatioFit fit, out RatioFit bent)
    {
        if (HasMoved(bins, fit) || bins.HasJerk(fit.WindowSeconds))
        {
            bent = default;
            return false;
        }

        var curvature = design.Curvature;
        var curved = curvature.Of(Pairs, room.Curved);
        var sums = RatioSums.Over(curved);
        var places = curved.Length / 2;
        bent = RatioRegression.Fit(sums, places, Noise * curvature.NoisePerFreedom, places * curvature.FreedomPerBin, fit.WindowSeconds);
        bent = bent with { PulseSize = fit.PulseSize, NoiseSize = fit.NoiseSize };
        return Math.Sqrt(sums.Infrared / places) < curvature.GainOfFastest * fit.PulseSize;
    }

    // From the first second of the window to its last, by more than breathing and the pulse itself move it.
    private bool HasMoved(SmoothedBins bins, in RatioFit fit)
    {
        var raw = room.Curved.AsSpan(0, 2 * length);
        bins.CopyNewest(raw);
        var second = 2 * (int)design.BinRateHz;
        var (infrared, red) = (0.0, 0.0);
        for (var n = 0; n < second; n += 2)
        {
            infrared += raw[raw.Length - second + n] - raw[n];
            red += raw[raw.Length - second + n + 1] - raw[n + 1];
        }

        return 2 * Math.Max(Math.Abs(infrared), Math.Abs(red)) / second > Math.Max(LargestMove, MovePulses * fit.PulseSize);
    }

    /// <summary>Takes one steady line away, where one explains enough of what the lights disagree by.</summary>
    /// <param name="bins">The newest bins.</param>
    /// <param name="fit">What was told of the window so far; then without the line.</param>
    public bool TryRemoveLine(SmoothedBins bins, ref RatioFit fit)
    {
        var noisePower = length * design.Kernel.NoiseGain * Noise.OfResidual(fit.Ratio);
        return TryRemoveLine(bins, noisePower, ref fit);
    }

    /// <summary>Takes one steady line away where it passes for noise: at the smoothing's edge half of a lamp is smoothed away, and counted to that. Of what is white no line explains much.</summary>
    /// <param name="bins">The newest bins.</param>
    /// <param name="fit">What was told of the window; then without the line, where there is one.</param>
    public void RemoveLineFromNoise(SmoothedBins bins, ref RatioFit fit)
    {
        var disagreement = loadedPower;
        loadedPower = RatioSums.Over(Pairs).Rest / length;
        if (!TryRemoveLine(bins, 0, ref fit))
        {
            loadedPower = disagreement;
        }
    }

    private bool TryRemoveLine(SmoothedBins bins, double noisePower, ref RatioFit fit)
    {
        if (!lines.TryRemove(Pairs, noisePower, design.Options.LineShare))
        {
            return false;
        }

        removed += LineRemover.FreedomOfLine;
        Noise = Noise.WithoutLine(lines.InInfrared, lines.InRed, design.Kernel.GainAt(lines.LineHz / design.BinRateHz), design.Kernel.RestNoiseGain);
        var left = RatioRegression.Fit(Pairs, Noise, design.Kernel.NoiseGain, removed, fit.WindowSeconds);
        fit = left with
        {
            Lines = fit.Lines + 1,
            LineHz = lines.RemovedHz[0],
            LinesExplain = 1 - (PowerOfDisagreement(left) / loadedPower),
            IsWithoutFirstWave = fit.IsWithoutFirstWave,
            IsWideLine = fit.IsWideLine,
            IsRoomLight = fit.Lines == 0 ? LinePart.IsEqualInCounts(lines.InInfrared, lines.InRed, bins.Last) : fit.IsRoomLight,
        };
        return true;
    }

    /// <summary>What is added in counts is divided by the light as it was in the window.</summary>
    /// <param name="bins">The newest bins, of which the window was loaded.</param>
    public void WeighLines(SmoothedBins bins)
    {
        var raw = room.Curved.AsSpan(0, 2 * length);
        bins.CopyNewest(raw);
        lines.Weigh(raw);
        AreLinesAdded = true;
    }

    /// <summary>Takes the line that was found first out of the same window anew, as light that is added in counts and nothing else.</summary>
    /// <param name="bins">The newest bins.</param>
    /// <param name="edge">What is taken away as slow; of a slow pulse the first wave may be left where only a lamp disturbed.</param>
    /// <param name="found">What was told of the window without it, the first time.</param>
    public RatioFit RemoveAdded(SmoothedBins bins, SlowEdge edge, in RatioFit found)
    {
        var hz = found.LineHz;
        var noise = Noise;
        Load(bins, found.WindowSeconds, edge);
        Noise = noise;
        WeighLines(bins);
        lines.RemoveAdded(Pairs, hz);
        var fit = WithoutMore(found with { Lines = 1, IsWideLine = false, IsWithoutFirstWave = false }, LineRemover.FreedomOfOwn);
        return fit with { LinesExplain = Math.Max(found.LinesExplain, fit.LinesExplain) };
    }

    /// <summary>Takes the second wave of the line that was taken last. What moves has one as well: it says nothing for a lamp that it explains more.</summary>
    /// <param name="fit">What was told of the window without the line; then without its second wave.</param>
    public void RemoveSecondWave(ref RatioFit fit)
    {
        lines.RemoveSecondWave(Pairs);
        fit = WithoutMore(fit, LineRemover.FreedomOfWave) with { LinesExplain = fit.LinesExplain };
    }

    /// <summary>Takes away what of the line that was taken last rides on the pulse.</summary>
    /// <param name="fit">What was told of the window without the line; then without that.</param>
    public void RemoveRiding(ref RatioFit fit)
    {
        lines.RemoveRiding(Pairs);
        fit = WithoutMore(fit, LineRemover.FreedomOfWave) with { LinesExplain = fit.LinesExplain };
    }

    /// <summary>Takes more away about the line that was taken last: one whose frequency drifts.</summary>
    /// <param name="fit">What was told of the window without the line; then without more of it.</param>
    public void WidenLine(ref RatioFit fit)
    {
        lines.Widen(Pairs);
        fit = WithoutMore(fit, LineRemover.FreedomOfWidening) with { IsWideLine = true };
    }

    private RatioFit WithoutMore(in RatioFit fit, int freedom)
    {
        removed += freedom;
        var left = RatioRegression.Fit(Pairs, Noise, design.Kernel.NoiseGain, removed, fit.WindowSeconds);
        return left with
        {
            Lines = fit.Lines,
            LineHz = fit.LineHz,
            LinesExplain = 1 - (PowerOfDisagreement(left) / loadedPower),
            IsWithoutFirstWave = fit.IsWithoutFirstWave,
            IsRoomLight = fit.IsRoomLight,
            IsWideLine = fit.IsWideLine,
        };
    }

    /// <summary>How both lights vary in the newest half of the shortest window: a disturbance that has just begun fills most of it.</summary>
    /// <param name="bins">The newest bins; their shortest window is loaded.</param>
    public LightScatter NewestScatter(SmoothedBins bins)
    {
        Load(bins, design.Options.ShortestWindowSeconds, SlowEdge.OfAnyPulse);
        return lines.Scatter(Pairs[(2 * (length / 2))..]);
    }

    /// <summary>The largest leap of both lights within the newest second, as the logarithm of infrared, and that of what holds none of the pulse.</summary>
    /// <param name="bins">The newest bins, a shortest window of them at least.</param>
    /// <param name="ratio">R of the known pulse; NaN where none is known.</param>
    /// <param name="least">Leap of infrared that somebody asks for.</param>
    public (double OfBoth, double BesidePulse) NewestLeap(SmoothedBins bins, double ratio, double least)
    {
        var raw = room.Curved.AsSpan(0, 2 * (int)(LightLeap.LookBackBesidePulseSeconds * design.BinRateHz));
        bins.CopyNewest(raw);
        return (
            LightLeap.LargestIn(raw[^(2 * (int)(LightLeap.LookBackSeconds * design.BinRateHz))..], design.BinRateHz, (Math.Max(least, design.Options.LeastLeap), design.Options.LeastLeap)),
            double.IsNaN(ratio) ? 0 : LightLeap.LargestBesidePulse(raw, design.BinRateHz, ratio, design.Options.LeastLeapBesidePulse));
    }

    private static double PowerOfDisagreement(in RatioFit fit) => Square(fit.Disagreement * fit.PulseSize);

    private static double Square(double x) => x * x;
}
