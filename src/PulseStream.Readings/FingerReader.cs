using PulseStream.Samples;

namespace PulseStream.Readings;

/// <summary>Turns the samples of one recording into beats, seconds, readings and sittings; the same for any cut into blocks.</summary>
public sealed class FingerReader
{
    /// <summary>A reader at the start of a recording.</summary>
    /// <param name="header">Rate, columns and full scale of the recording.</param>
    /// <param name="curve">The curve from ratio of ratios to SpO2.</param>
    /// <param name="options">Limits with their reasons.</param>
    public FingerReader(RecordingHeader header, CalibrationCurve curve, ReadingOptions options)
    {
    }

    /// <summary>Reads consecutive samples; a jump of the first index is a gap.</summary>
    /// <param name="block">Samples after those of the block before.</param>
    /// <param name="observer">Told what was found, while this runs.</param>
    public void Read(SampleBlock block, IReadingObserver observer)
    {
    }

    /// <summary>The recording has ended: tells the last sitting. An incomplete last second is not told.</summary>
    /// <param name="observer">Told what was found.</param>
    public void Finish(IReadingObserver observer)
    {
    }
}
