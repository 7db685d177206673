using PulseStream.Samples;

namespace PulseStream.Sources;

/// <summary>
/// Turns a sample counter, which may wrap at 8 to 32 bits, into sample indices. The first value becomes index 0.
/// A value ahead of the last is a jump, however far. A value behind it is a wrap at 2^k, k from 8 to 32, where the last
/// value lies within one second below 2^k and this one within one second above 0; the narrowest such k is taken, because
/// it loses the fewest samples. Any other value behind the last is refused and changes nothing.
/// </summary>
/// <param name="rate">Tells how many samples a second has.</param>
public sealed class SampleCounter(SampleRate rate)
{
    private const int NarrowestBits = 8;
    private const int WidestBits = 32;

    private bool _started;
    private long _last;
    private long _index;

    /// <summary>How far one value lies ahead of another, in samples: 0 for a repeat, negative for a step back.</summary>
    /// <param name="from">The earlier value, 0 or more.</param>
    /// <param name="to">The later value, 0 or more.</param>
    /// <param name="rate">Tells how many samples a second has.</param>
    public static long Distance(long from, long to, SampleRate rate)
    {
        ArgumentNullException.ThrowIfNull(rate);
        ArgumentOutOfRangeException.ThrowIfNegative(from);
        ArgumentOutOfRangeException.ThrowIfNegative(to);
        var ahead = to - from;
        return ahead >= 0 || !(to <= rate.Hz) ? ahead : ahead + SpanOfWrapAfter(from, rate);
    }

    /// <summary>Looks at the next value of the counter.</summary>
    /// <param name="raw">The value as it was received, 0 or more.</param>
    /// <param name="index">Samples since the first value; that of the last value taken where this one is not.</param>
    public CounterStep Step(long raw, out long index)
    {
        var ahead = _started ? Distance(_last, raw, rate) : 0;
        index = _index;
        if (_started && ahead <= 0)
        {
            return ahead == 0 ? CounterStep.Repeat : CounterStep.StepBack;
        }

        _started = true;
        _last = raw;
        _index += ahead;
        index = _index;
        return CounterStep.Taken;
    }

    /// <summary>Takes the next value of the counter where it is one more than the last: what <see cref="Step"/> would do at greater length.</summary>
    /// <param name="raw">The value as it was received.</param>
    /// <returns>False where it is any other, or the first: nothing has changed then.</returns>
    internal bool TryFollow(long raw)
    {
        if (!_started || raw != _last + 1)
        {
            return false;
        }

        _last = raw;
        _index++;
        return true;
    }

    /// <summary>How far a value lies ahead of the last one taken, without taking it: 0 for a repeat, negative for a step back.</summary>
    /// <param name="raw">The value as it was received, 0 or more.</param>
    /// <exception cref="InvalidOperationException">No value has been taken yet.</exception>
    public long DistanceTo(long raw) =>
        _started ? Distance(_last, raw, rate) : throw new InvalidOperationException("The counter has no value yet.");

    private static long SpanOfWrapAfter(long last, SampleRate rate)
    {
        for (var bits = NarrowestBits; bits <= WidestBits; bits++)
        {
            var span = 1L << bits;
            if (last < span && span - last <= rate.Hz)
            {
                return span;
            }
        }

        return 0;
    }
}
