using PulseStream.Samples;

namespace PulseStream.Signal;

/// <summary>
/// The signal machine of one recording: samples in, measurements of each whole second and the beats in it out. A restart
/// (a gap longer than the option, a second at an end stop) forgets the window; the edges of the converter are remembered.
/// </summary>
public sealed class FingerSignal
{
    private const double ClippedShare = 0.02;
    private readonly SignalDesign design;
    private readonly LightMeter meter;
    private readonly BinAverager averager;
    private readonly SmoothedBins bins;
    private readonly WindowAnalysis analysis;
    private readonly bool hasRed;
    private readonly bool isPleth;
    private readonly long bridgedBins;
    private long second;
    private long secondEnd;
    private bool isRestarted;

    /// <summary>A machine at the start of a recording.</summary>
    /// <param name="design">Filters and bases for the recording's rate.</param>
    /// <param name="columns">What the recording has.</param>
    /// <param name="fullScaleCounts">The converter's largest count, or null.</param>
    public FingerSignal(SignalDesign design, SampleColumns columns, double? fullScaleCounts)
    {
        this.design = design;
        hasRed = columns.HasFlag(SampleColumns.Red) && columns.HasFlag(SampleColumns.Infrared);
        isPleth = !columns.HasFlag(SampleColumns.Infrared);
        meter = new(fullScaleCounts, design.Rate.Hz);
        averager = new(design.SamplesPerBin);
        bins = new(design);
        analysis = new(design, hasRed, isPleth);
        bridgedBins = (long)(design.Options.BridgedGapSeconds * design.BinRateHz) + 1;
        secondEnd = design.Rate.FirstIndexOf(1);
    }

    /// <summary>Index of the next sample expected.</summary>
    public long NextIndex { get; private set; }

    /// <summary>Beats found with the second told last; valid until the next call.</summary>
    public ReadOnlySpan<Beat> Beats => analysis.Beats;

    /// <summary>Goes over missing samples; true for each second that ends among them: call again until false.</summary>
    /// <param name="toIndex">Index of the next sample there is.</param>
    /// <param name="complete">The second that ended.</param>
    public bool TrySkip(long toIndex, out SignalSecond complete)
    {
        if (toIndex >= secondEnd)
        {
            NextIndex = secondEnd;
            complete = EndSecond();
            return true;
        }

        NextIndex = Math.Max(NextIndex, toIndex);
        complete = default;
        return false;
    }

    /// <summary>Takes the sample at <see cref="NextIndex"/>; true when it was the last of its second.</summary>
    /// <param name="sample">The sample.</param>
    /// <param name="complete">The second that ended.</param>
    public bool TryStep(in Sample sample, out SignalSecond complete)
    {
        var infrared = isPleth ? double.NaN : LightOf(sample.Infrared, sample.Ambient);
        var red = hasRed ? LightOf(sample.Red, sample.Ambient) : double.NaN;
        var logInfrared = isPleth ? -sample.Pleth : Math.Log(infrared);
        meter.Step(sample, infrared, red, logInfrared);
        if (averager.TryStep(NextIndex, logInfrared, hasRed ? Math.Log(red) : 0, out var bin))
        {
            Take(bin);
        }

        NextIndex++;
        if (NextIndex < secondEnd)
        {
            complete = default;
            return false;
        }

        complete = EndSecond();
        return true;
    }

    /// <summary>The second told last was believed and calm: movement is told from its pulse from now on.</summary>
    public void LearnPulse() => analysis.Learn();

    /// <summary>The finger has left: its pulse says nothing of the next.</summary>
    public void ForgetPulse() => analysis.ForgetPulse();

    // A dark detector still has a logarithm: one count is less than any finger lets through.
    private static double LightOf(double counts, double ambient) =>
        Math.Max(1, double.IsNaN(ambient) ? counts : counts - ambient);

    private void Take(in Bin bin)
    {
        if (!bins.IsEmpty && bin.Index - bins.Last.Index > bridgedBins)
        {
            Restart();
        }

        bins.Push(bin);
    }

    private void Restart()
    {
        bins.Restart();
        analysis.Restart();
        isRestarted = true;
    }

    private SignalSecond EndSecond()
    {
        var light = meter.Take(
            secondEnd - design.Rate.FirstIndexOf(second),
            Math.Sqrt(bins.NoiseOver(1).Infrared * design.SamplesPerBin));
        if (light.AtEndStopShare > ClippedShare)
        {
            averager.Restart();
            Restart();
        }

        var measured = analysis.Measure(bins, secondEnd);
        var told = new SignalSecond(second, light, measured.Fit, measured.Pulse, isRestarted);
        bins.EndSecond();
        isRestarted = false;
        second++;
        secondEnd = design.Rate.FirstIndexOf(second + 1);
        return told;
    }
}
