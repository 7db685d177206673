using PulseStream.Samples;

namespace PulseStream.Sources.Csv;

/// <summary>What a column 'time_s' tells.</summary>
/// <param name="Rate">The sample rate.</param>
/// <param name="ResolutionSeconds">How finely the times are written.</param>
internal sealed record TimeScale(SampleRate Rate, double ResolutionSeconds);
