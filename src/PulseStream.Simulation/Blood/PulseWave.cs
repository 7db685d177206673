namespace PulseStream.Simulation.Blood;

/// <summary>One beat of the heart as the fingertip sees it.</summary>
/// <param name="OnsetSeconds">Phase 0.</param>
/// <param name="IntervalSeconds">Until the next beat's onset.</param>
/// <param name="ScaleSeconds">Time that one unit of phase takes: the mean interval at this rate, so that an early beat is no quicker one.</param>
/// <param name="Height">Of the beat, 1 for an ordinary one.</param>
/// <param name="SecondWave">Height of the second wave over the first.</param>
internal readonly record struct PulseWave(
    double OnsetSeconds,
    double IntervalSeconds,
    double ScaleSeconds,
    double Height,
    double SecondWave)
{
    /// <summary>Time from which the beat adds to the volume.</summary>
    public double StartSeconds => OnsetSeconds + (PulseShape.Start * ScaleSeconds);

    /// <summary>Time after which the beat adds nothing.</summary>
    public double EndSeconds => OnsetSeconds + (Math.Max(PulseShape.End * ScaleSeconds, IntervalSeconds));

    /// <summary>What the beat adds to the volume at a time.</summary>
    public double VolumeAt(double seconds) => Height * PulseShape.Volume((seconds - OnsetSeconds) / ScaleSeconds, SecondWave);

    /// <summary>What the beat adds to the rise of the volume at a time, per second.</summary>
    public double RiseAt(double seconds) =>
        Height / ScaleSeconds * PulseShape.Rise((seconds - OnsetSeconds) / ScaleSeconds, SecondWave);
}
