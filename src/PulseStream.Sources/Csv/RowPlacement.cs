using PulseStream.Samples;

namespace PulseStream.Sources.Csv;

/// <summary>
/// Gives each good row its index, counts what is missing between them, and refuses steps back. A jump over more than an
/// hour, and the first row of all, wait for the row after them: where that one lies within an hour of it, it is
/// confirmed and counts like any other jump; where it does not, or carries on from before, the jump was a stray value
/// and its row is bad. So one spoilt counter costs one row and not the rest of the file. Shorter jumps never wait.
/// </summary>
internal sealed class RowPlacement(RowClock clock, SampleRate rate, RowFaults faults, BlockBuilder blocks)
{
    // Longer than any pause in a spot check, far shorter than what a flipped high bit or a joined number makes.
    private const double LargestJumpSeconds = 3600;

    private readonly long _largestJump = LargestJump(rate);
    private CsvRow? _waiting;
    private long _badBeforeWaiting;
    private long _badSinceGood;
    private long _lastIndex = -1;
    private bool _started;
    private long _missing;
    private long _repeats;

    /// <summary>What has been counted; bad rows that nothing good has followed yet are missing, too.</summary>
    public SampleTally Tally => new(blocks.Count, _missing + _badSinceGood + _badBeforeWaiting, faults.Total, _repeats);

    /// <summary>The jump, in samples, beyond which a row must be confirmed by the next.</summary>
    public static long LargestJump(SampleRate rate) => (long)(LargestJumpSeconds * rate.Hz);

    public void AddGood(in CsvRow row)
    {
        if (_waiting is { } waiting && !Settle(waiting, row))
        {
            _repeats++;
            return;
        }

        var distance = _started ? clock.DistanceTo(row.Stamp, _badSinceGood) : long.MaxValue;
        if (distance > _largestJump)
        {
            _waiting = row;
            (_badBeforeWaiting, _badSinceGood) = (_badSinceGood, 0);
        }
        else if (distance > 0)
        {
            Take(row, distance, _badSinceGood);
            _badSinceGood = 0;
        }
        else if (distance == 0)
        {
            _repeats++;
        }
        else
        {
            Refuse(RowFault.StepBack, row.Line, $"{-distance} samples back");
        }
    }

    /// <summary>Takes a good row where it is the sample right after the last row, which was good, too.</summary>
    /// <param name="stamp">Of the row.</param>
    /// <param name="values">Its numbers, one a <see cref="CsvColumn"/>.</param>
    /// <returns>False where it is not: nothing has happened then.</returns>
    public bool TryFollow(RowStamp stamp, ReadOnlySpan<double> values)
    {
        if (!_started || _waiting is not null || _badSinceGood > 0 || !clock.TryFollow(stamp))
        {
            return false;
        }

        blocks.Add(++_lastIndex, values[(int)CsvColumn.Red..]);
        return true;
    }

    public void AddBad() => _badSinceGood++;

    /// <summary>No row follows: a first row stands without confirmation, a stray one does not.</summary>
    public void End()
    {
        if (_waiting is { } waiting)
        {
            Release(waiting, confirmed: !_started);
        }
    }

    // False where the row repeats the one that waits.
    private bool Settle(in CsvRow waiting, in CsvRow next)
    {
        var carriesOn = _started && IsNear(clock.DistanceTo(next.Stamp, _badBeforeWaiting + _badSinceGood + 1));
        var ahead = clock.Distance(waiting.Stamp, next.Stamp);
        if (!carriesOn && ahead == 0)
        {
            return false;
        }

        Release(waiting, confirmed: !carriesOn && IsNear(ahead));
        return true;
    }

    private void Release(in CsvRow waiting, bool confirmed)
    {
        var badBefore = _badBeforeWaiting;
        _badBeforeWaiting = 0;
        _waiting = null;
        if (!confirmed)
        {
            _badSinceGood += badBefore;
            Refuse(RowFault.StrayJump, waiting.Line, "");
        }
        else if (_started)
        {
            Take(waiting, clock.DistanceTo(waiting.Stamp, badBefore), badBefore);
        }
        else
        {
            var index = clock.FirstIndex(waiting.Stamp, badBefore);
            Take(waiting, index + 1, badBefore);
        }
    }

    private bool IsNear(long distance) => Math.Abs(distance) <= _largestJump;

    private void Take(in CsvRow row, long distance, long badBefore)
    {
        // A bad row whose place the next good one jumps over is one missing sample, not two.
        _missing += Math.Max(distance - 1, badBefore);
        clock.Take(row.Stamp, distance);
        _started = true;
        _lastIndex += distance;
        blocks.Add(_lastIndex, row.Sample);
    }

    private void Refuse(RowFault fault, long line, string detail)
    {
        faults.Add(fault, line, detail);
        _badSinceGood++;
    }
}
