using PulseStream.Samples;

namespace PulseStream.Sources.Wire;

/// <summary>
/// Gives the samples of good frames their indices. With a counter, the counter tells what is missing; over a gap in time,
/// arrival tells how often a narrow counter wrapped meanwhile, and whether it began again. Without a counter, each refused
/// frame counts as missing, and a gap in time counts by its length. A counter that leaps is believed when the next frame
/// follows it; the first of all too, where no checksum proves it.
/// </summary>
internal sealed class SamplePlacement(SampleRate rate, CounterSpan? counter, bool isProven, WireFaults faults, BlockBuilder blocks)
{
    /// <summary>From here on silence is a gap: nothing is sent late by so much.</summary>
    public const double GapSeconds = 2;

    // Longer than any pause in a spot check, far shorter than what a flipped high bit makes.
    private const double LongestJumpSeconds = 3600;

    // By how much a counter may be ahead of arrival over a gap before it is taken to have begun again.
    private const double GapSlackSeconds = 10;

    // Unproven, a leap waits for the next frame, which must follow it as closely as this: indices never go back, so that a
    // flipped bit of a counter would shift all that comes.
    private const double UnprovenJumpSeconds = 1;

    private Held? _held;
    private bool _started;
    private bool _isBroken;
    private long _firstRaw;
    private long _lastRaw;
    private long _lastIndex = -1;
    private double _lastArrival;
    private long _missing;
    private long _repeats;
    private long _lost;

    public ArrivalRate Arrivals { get; } = new(rate.Hz);

    public SampleTally Tally => new(blocks.Count, _missing + (_started ? _lost : 0), faults.Total, _repeats) { ArrivalRateHz = Arrivals.ClockHz };

    /// <summary>The line was closed: what follows comes after a gap.</summary>
    public void Break() => _isBroken = true;

    public void Lose(WireFault fault, long frames, long samples)
    {
        faults.Add(fault, frames);
        _lost += samples;
    }

    /// <summary>Takes the samples of a good frame.</summary>
    /// <param name="samples">At least one.</param>
    /// <param name="raw">Counter of the first; any where there is none.</param>
    /// <param name="arrivalSeconds">When the frame's last byte came, in seconds of any steady clock.</param>
    public void Take(ReadOnlySpan<Sample> samples, long raw, double arrivalSeconds)
    {
        var next = new Held(raw, arrivalSeconds, _isBroken || arrivalSeconds - _lastArrival >= GapSeconds, samples.Length);
        if (counter is null)
        {
            Place(samples, next, _started ? AheadByOrder(next) : 1);
        }
        else if (_held is not { } held || Settle(held, next))
        {
            TakeCounted(samples, next);
        }
        else
        {
            _repeats += samples.Length;
        }
    }

    /// <summary>No frame follows.</summary>
    public void End()
    {
        if (_held is { } held)
        {
            Release(held, isConfirmed: !_started);
        }
    }

    private void TakeCounted(ReadOnlySpan<Sample> samples, in Held next)
    {
        if (_started && next.Raw == _firstRaw && !next.IsAfterGap)
        {
            _repeats += samples.Length;
            return;
        }

        var ahead = _started ? AheadByCounter(next) : isProven ? 1 : 0;
        ahead = ahead < 1 && isProven && next.IsAfterGap ? AheadByArrival(next) : ahead;
        if (ahead >= 1 && ahead <= LongestJump(next))
        {
            Place(samples, next, ahead);
        }
        else
        {
            _held = next with { Samples = samples.ToArray() };
        }
    }

    // False where the frame repeats the one that waits.
    private bool Settle(in Held held, in Held next)
    {
        if (next.Raw == held.Raw)
        {
            return false;
        }

        var ahead = counter!.Ahead(held.Raw + held.Count - 1, next.Raw);
        Release(held, isConfirmed: ahead >= 1 && ahead <= UnprovenJumpSeconds * rate.Hz);
        return true;
    }

    private void Release(in Held held, bool isConfirmed)
    {
        _held = null;
        if (!isConfirmed)
        {
            Lose(WireFault.StrayCounter, 1, held.Count);
            return;
        }

        var ahead = _started ? AheadByCounter(held) : 1;
        Place(held.Samples, held, ahead >= 1 && ahead <= LongestJumpSeconds * rate.Hz ? ahead : AheadByArrival(held));
    }

    private double LongestJump(in Held next) => isProven
        ? LongestJumpSeconds * rate.Hz
        : next.IsAfterGap ? (2 * Passed(next)) + (GapSlackSeconds * rate.Hz) : 1;

    // 0 or less where the counter went back, or leapt over a gap further than time did: it began again.
    private long AheadByCounter(in Held next)
    {
        var ahead = counter!.Ahead(_lastRaw, next.Raw);
        if (!next.IsAfterGap)
        {
            return ahead;
        }

        var passed = Passed(next);
        if (counter.Span > 0 && passed > ahead)
        {
            ahead += counter.Span * (long)Math.Round((passed - ahead) / counter.Span);
        }

        return ahead <= (2 * passed) + (GapSlackSeconds * Arrivals.GapHz) ? ahead : 0;
    }

    private long AheadByOrder(in Held next) => next.IsAfterGap ? AheadByArrival(next) : 1 + _lost;

    private long AheadByArrival(in Held next) => Math.Max(1, (long)Math.Round(Passed(next)) - next.Count + 1);

    // Samples that should have come since the last one did.
    private double Passed(in Held next) => (next.Arrival - _lastArrival) * Arrivals.GapHz;

    private void Place(ReadOnlySpan<Sample> samples, in Held taken, long ahead)
    {
        _missing += _started ? ahead - 1 : 0;
        var index = _lastIndex + ahead;
        foreach (ref readonly var sample in samples)
        {
            blocks.Add(index++, sample);
        }

        if (taken.IsAfterGap)
        {
            Arrivals.Restart();
        }

        _started = true;
        _isBroken = false;
        _lost = 0;
        _lastIndex = index - 1;
        (_firstRaw, _lastRaw, _lastArrival) = (taken.Raw, taken.Raw + taken.Count - 1, taken.Arrival);
        Arrivals.Add(taken.Arrival, _lastIndex);
    }

    private readonly record struct Held(long Raw, double Arrival, bool IsAfterGap, int Count)
    {
        public Sample[] Samples { get; init; } = [];
    }
}
