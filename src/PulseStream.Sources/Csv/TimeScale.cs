using PulseStream.Samples;

namespace PulseStream.Sources.Csv;

/// <summary>What a column 'time_s' tells.</summary>
/// <param name="Rate">The sample rate.</param>
/// <param name="RoundingSeconds">The width within which rounding moves the times, 0 where they are exact.</param>
internal sealed record TimeScale(SampleRate Rate, double RoundingSeconds);
