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
        : this(new WindowRoom(design), columns, fullScaleCounts)
    {
    }

    /// <summary>A machine at the start of a recording, one of several that are read in turn.</summary>
    /// <param name="room">Filters and bases for the recording's rate, and room to apply them in.</param>
    /// <param name="columns">What the recording has.</param>
    /// <param name="fullScaleCounts">The converter's largest count, or null.</param>
    public FingerSignal(WindowRoom room, SampleColumns columns, double? fullScaleCounts)
    {
        design = room.Design;
        hasRed = columns.HasFlag(SampleColumns.Red) && columns.HasFlag(SampleColumns.Infrared);
        isPleth = !columns.HasFlag(SampleColumns.Infrared);
        meter = new(fullScaleCounts, design.Rate.Hz, columns);
        averager = new(design.SamplesPerBin, hasRed);
        bins = new(design);
        analysis = new(room, hasRed, isPleth);
        bridgedBins = (long)(design.Options.BridgedGapSeconds * design.BinRateHz) + 1;
        secondEnd = design.Rate.FirstIndexOf(1);
    }

    /// <summary>Index of the next sample expected.</summary>
    public long NextIndex { get; private set; }

    /// <summary>Beats found with the second told last; valid until the next call to any machine in the same room.</summary>
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
        var one = new ReadOnlySpan<Sample>(in sample);
        return TryRead(ref one, out complete);
    }

    /// <summary>Takes samples from <see cref="NextIndex"/> on, up to the end of their second; true when it ended: call again until false.</summary>
    /// <param name="samples">Consecutive samples; those that were taken are cut off.</param>
    /// <param name="complete">The second that ended.</param>
    public bool TryRead(ref ReadOnlySpan<Sample> samples, out SignalSecond complete)
    {
        var length = (int)Math.Min(samples.Length, secondEnd - NextIndex);
        Take(samples[..length]);
        samples = samples[length..];
        if (NextIndex < secondEnd)
        {
            complete = default;
            return false;
        }

        complete = EndSecond();
        return true;
    }

    /// <summary>Leaps of light up to so much mean nothing from the next second on: they need not be looked for.</summary>
    /// <param name="logInfrared">Leap of infrared, as a logarithm; infinite where none means anything.</param>
    public void IgnoreLeapsUpTo(double logInfrared) => analysis.LeastLeap = logInfrared;

    /// <summary>The second told last was believed and calm: movement is told from its pulse from now on.</summary>
    /// <param name="isProven">Whether the pulse is a living finger's for sure, so that nobody has to ask again whether it is one.</param>
    public void LearnPulse(bool isProven) => analysis.Learn(isProven);

    /// <summary>The second told last was refused: whether what pulses from now on is that pulse has to be asked again.</summary>
    public void DoubtPulse() => analysis.DoubtPulse();

    /// <summary>The finger has left: its pulse says nothing of the next.</summary>
    public void ForgetPulse() => analysis.ForgetPulse();

    private void Take(ReadOnlySpan<Sample> samples)
    {
        Average(samples);
        if (isPleth)
        {
            meter.AddUnlit(samples);
        }
        else
        {
            meter.Add(samples);
        }
    }

    // Comes first: what is averaged takes long enough to compute for the next samples to come from memory meanwhile.
    private void Average(ReadOnlySpan<Sample> samples)
    {
        while (!samples.IsEmpty)
        {
            if (averager.TryTurnTo(NextIndex, out var room, out var begun))
            {
                Take(begun);
            }

            var length = TakeWhole(samples, room);
            if (length == 0)
            {
                length = TakePart(samples, room);
            }

            samples = samples[length..];
            NextIndex += length;
        }
    }

    // Most samples come as bins that are whole: those cost less together.
    private int TakeWhole(ReadOnlySpan<Sample> samples, int room)
    {
        if (isPleth || room < design.SamplesPerBin || samples.Length < room)
        {
            return 0;
        }

        var lights = averager.AverageWhole(samples, out var first);
        if (!lights.IsEmpty)
        {
            RestartBehindGap(first);
            bins.Push(first, lights);
        }

        return lights.Length * design.SamplesPerBin;
    }

    private int TakePart(ReadOnlySpan<Sample> samples, int room)
    {
        var length = Math.Min(room, samples.Length);
        if (isPleth)
        {
            averager.AddPleth(samples[..length]);
        }
        else
        {
            averager.Add(samples[..length]);
        }

        if (length == room && averager.TryTake(out var complete))
        {
            Take(complete);
        }

        return length;
    }

    private void Take(in Bin bin)
    {
        RestartBehindGap(bin.Index);
        bins.Push(bin);
    }

    private void RestartBehindGap(long bin)
    {
        if (!bins.IsEmpty && bin - bins.Last.Index > bridgedBins)
        {
            Restart();
        }
    }

    private void Restart()
    {
        bins.Restart();
        analysis.Restart();
        isRestarted = true;
    }

    private SignalSecond EndSecond()
    {
        bins.Smooth();
        var light = meter.Take(
            secondEnd - design.Rate.FirstIndexOf(second),
            Math.Sqrt(bins.NoiseOver(1).Infrared * design.SamplesPerBin));
        if (light.AtEndStopShare > ClippedShare)
        {
            averager.Restart();
            Restart();
        }

        // A second without a sample has nothing new to measure: a gap of hours costs no more than telling its seconds.
        var measured = light.MissingShare < 1 ? analysis.Measure(bins, secondEnd) : analysis.Nothing();
        var told = new SignalSecond(second, light, measured.Fit, measured.Pulse, isRestarted);
        bins.EndSecond();
        isRestarted = false;
        second++;
        secondEnd = design.Rate.FirstIndexOf(second + 1);
        return told;
    }
}
