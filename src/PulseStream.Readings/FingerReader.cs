using PulseStream.Samples;
using PulseStream.Signal;

namespace PulseStream.Readings;

/// <summary>Turns the samples of one recording into beats, seconds, readings and sittings; the same for any cut into blocks.</summary>
public sealed class FingerReader
{
    private readonly FingerSignal signal;
    private readonly SecondJudge judge;
    private readonly ReadingKeeper keeper;

    /// <summary>A reader at the start of a recording.</summary>
    /// <param name="header">Rate, columns and full scale of the recording.</param>
    /// <param name="curve">The curve from ratio of ratios to SpO2.</param>
    /// <param name="options">Limits with their reasons.</param>
    public FingerReader(RecordingHeader header, CalibrationCurve curve, ReadingOptions options)
        : this(header, curve, options, new WindowRoom(new SignalDesign(header.Rate, options.Signal)))
    {
    }

    /// <summary>A reader at the start of a recording, one of several that are read in turn and share what they do not keep.</summary>
    /// <param name="header">Rate, columns and full scale of the recording.</param>
    /// <param name="curve">The curve from ratio of ratios to SpO2.</param>
    /// <param name="options">Limits with their reasons.</param>
    /// <param name="room">Designed for the header's rate and the options' signal stage. Readers that run at the same time need one each.</param>
    /// <exception cref="ArgumentException">The room was designed for another rate or for other options.</exception>
    public FingerReader(RecordingHeader header, CalibrationCurve curve, ReadingOptions options, WindowRoom room)
    {
        if (room.Design.Rate != header.Rate || room.Design.Options != options.Signal)
        {
            throw new ArgumentException(
                $"The room is for {room.Design.Rate.Hz} Hz and its own options, the recording has {header.Rate.Hz} Hz; design one for the header's rate and the options' signal stage.",
                nameof(room));
        }

        var hasRed = header.Columns.HasFlag(SampleColumns.Red) && header.Columns.HasFlag(SampleColumns.Infrared);
        signal = new(room, header.Columns, header.FullScaleCounts);
        judge = new(curve, options, hasRed);
        keeper = new(options);
    }

    /// <summary>Seconds for which the same whole percent has been held, the second told last among them; 0 where none is.</summary>
    public int SteadySeconds => keeper.SteadySeconds;

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
    public void Finish(IReadingObserver observer) => keeper.Finish(observer);

    private void Tell(in SignalSecond measured, IReadingObserver observer)
    {
        foreach (ref readonly var beat in signal.Beats)
        {
            observer.OnBeat(beat);
        }

        var second = judge.Judge(measured);
        signal.IgnoreLeapsUpTo(judge.LargestIdleLeap);
        if (second.IsUsable && !measured.Fit.IsSeparated)
        {
            signal.LearnPulse(judge.IsProven);
        }
        else if (!judge.HasFinger)
        {
            signal.ForgetPulse();
        }
        else if (!second.IsUsable)
        {
            signal.DoubtPulse();
        }

        keeper.Take(second, judge.HasFinger, observer);
    }
}
