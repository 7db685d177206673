using PulseStream.Samples;

namespace PulseStream.Sources.Wire;

/// <summary>How far one value of a frame's counter lies ahead of another.</summary>
/// <param name="span">Where the counter wraps; 0 where its width is not told, as in text.</param>
/// <param name="rate">Sample rate.</param>
internal sealed class CounterSpan(long span, SampleRate rate)
{
    /// <summary>Where the counter wraps; 0 where not told.</summary>
    public long Span => span;

    /// <summary>Samples ahead, 0 or negative for a step back of a counter whose width is not told.</summary>
    public long Ahead(long from, long to) => span > 0
        ? (((to - from) % span) + span) % span
        : SampleCounter.Distance(from, to, rate);
}
