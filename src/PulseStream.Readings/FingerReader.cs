using PulseStream.Samples;
using PulseStream.Signal;

namespace PulseStream.Readings;

/// <summary>Turns the samples of one recording into beats, seconds, readings and sittings; the same for any cut into blocks.</summary>
public sealed class FingerReader
{
    private readonly FingerSignal signal;
    private readonly SecondJudge judge;
    private readonly SteadyValue steady;
    private readonly SittingKeeper sittings;

    /// <summary>A reader at the start of a recording.</summary>
    /// <param name="header">Rate, columns and full scale of the recording.</param>
    /// <param name="curve">The curve from ratio of ratios to SpO2.</param>
    /// <param name="options">Limits with their reasons.</param>
    public FingerReader(RecordingHeader header, CalibrationCurve curve, ReadingOptions options)
        : this(header, curve, options, new SignalDesign(header.Rate, options.Signal))
    {
    }

    /// <summary>A reader at the start of a recording, one of many that share what was designed for their rate.</summary>
    /// <param name="header">Rate, columns and full scale of the recording.</param>
    /// <param name="curve">The curve from ratio of ratios to SpO2.</param>
    /// <param name="options">Limits with their reasons.</param>
    /// <param name="design">Filters and bases for the header's rate and the options' signal stage.</param>
    /// <exception cref="ArgumentException">The design is for another rate or for other options.</exception>
    public FingerReader(RecordingHeader header, CalibrationCurve curve, ReadingOptions options, SignalDesign design)
    {
        if (design.Rate != header.Rate || design.Options != options.Signal)
        {
            throw new ArgumentException($"The design is for {design.Rate.Hz} Hz, or for other options; the recording has {header.Rate.Hz} Hz.", nameof(design));
        }

        var hasRed = header.Columns.HasFlag(SampleColumns.Red) && header.Columns.HasFlag(SampleColumns.Infrared);
        signal = new(design, header.Columns, header.FullScaleCounts);
        judge = new(curve, options.Judge, hasRed);
        steady = new(options);
        sittings = new(options);
    }

    /// <summary>Reads consecutive samples; a jump of the first index is a gap.</summary>
    /// <param name="block">Samples after those of the block before.</param>
    /// <param name="observer">Told what was found, while this runs.</param>
    public void Read(SampleBlock block, IReadingObserver observer)
    {
        while (signal.TrySkip(block.FirstIndex, out var skipped))
        {
            Tell(skipped, observer);
        }

        var samples = block.Samples.Span;
        while (signal.TryRead(ref samples, out var complete))
        {
            Tell(complete, observer);
        }
    }

    /// <summary>The recording has ended: tells the last sitting. An incomplete last second is not told.</summary>
    /// <param name="observer">Told what was found.</param>
    public void Finish(IReadingObserver observer)
    {
        if (sittings.Finish() is { } sitting)
        {
            observer.OnSitting(sitting);
        }
    }

    private void Tell(in SignalSecond measured, IReadingObserver observer)
    {
        foreach (ref readonly var beat in signal.Beats)
        {
            observer.OnBeat(beat);
        }

        var second = judge.Judge(measured);
        observer.OnSecond(second);
        var accepted = steady.Step(second);
        if (accepted is not null)
        {
            observer.OnReading(accepted);
        }

        if (sittings.Step(second, judge.HasFinger, accepted, steady.Held) is { } sitting)
        {
            observer.OnSitting(sitting);
        }
    }
}
