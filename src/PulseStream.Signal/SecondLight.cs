namespace PulseStream.Signal;

/// <summary>Light of one second.</summary>
/// <param name="MissingShare">Share of its samples that are missing, 0 to 1.</param>
/// <param name="AtEndStopShare">Share of its samples that stand at an end stop of either channel, 0 to 1.</param>
/// <param name="InfraredCounts">Mean infrared, ambient taken off, detector counts; NaN for a ready-made plethysmogram or an empty second.</param>
/// <param name="RedCounts">Mean red, ambient taken off, detector counts; NaN without red or in an empty second.</param>
/// <param name="AmbientCounts">Mean of the dark samples, detector counts; NaN without such a column.</param>
/// <param name="AmbientSwing">Highest less lowest dark sample, detector counts; NaN without such a column.</param>
/// <param name="AccelerationSwing">Root mean square of the acceleration about its mean, m/s²; NaN without such columns.</param>
/// <param name="LevelSwing">Standard deviation of infrared within the second over its mean, which is that of its logarithm where it is small; NaN for an empty second.</param>
/// <param name="NoiseSwing">Standard deviation that white noise alone gives the logarithm of infrared.</param>
/// <param name="BelowEndStop">How far the mean of the channel that is nearer to it, ambient with it, is below the converter's largest count, as a logarithm; NaN where that was not told or the second is empty.</param>
public readonly record struct SecondLight(
    double MissingShare,
    double AtEndStopShare,
    double InfraredCounts,
    double RedCounts,
    double AmbientCounts,
    double AmbientSwing,
    double AccelerationSwing,
    double LevelSwing,
    double NoiseSwing,
    double BelowEndStop = double.NaN);
