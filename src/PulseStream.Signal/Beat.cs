namespace PulseStream.Signal;

/// <summary>One pulse beat.</summary>
/// <param name="RiseIndex">Sample index of the steepest rise of blood volume, interpolated between samples.</param>
/// <param name="IntervalSeconds">Seconds since the beat before; NaN for the first after a gap or a disturbance.</param>
/// <param name="RatioOfRatios">(AC/DC of red) / (AC/DC of infrared) over the beat, no unit; NaN without red or without a regression that holds.</param>
/// <param name="PerfusionPercent">Infrared, peak to trough over the mean, percent; NaN for a ready-made plethysmogram.</param>
/// <param name="Quality">Agreement with the beats before, 0 to 1.</param>
public readonly record struct Beat(
    double RiseIndex,
    double IntervalSeconds,
    double RatioOfRatios,
    double PerfusionPercent,
    double Quality);
