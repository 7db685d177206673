using PulseStream.Samples;

namespace PulseStream.Sources.Csv;

/// <summary>The column 'sample' places each row.</summary>
/// <param name="rate">Sample rate.</param>
/// <param name="firstCounter">The counter of a bad row before the first good one, where there was one: index 0 is there.</param>
internal sealed class CounterClock(SampleRate rate, Func<long?> firstCounter) : RowClock
{
    private readonly SampleCounter _counter = new(rate);

    public override long Distance(RowStamp from, RowStamp to) => SampleCounter.Distance(from.Counter, to.Counter, rate);

    public override long DistanceTo(RowStamp row, long badBetween) => _counter.DistanceTo(row.Counter);

    public override long FirstIndex(RowStamp row, long badBefore)
    {
        var ahead = firstCounter() is { } first ? SampleCounter.Distance(first, row.Counter, rate) : 0;

        // A bad row may have a bad counter, too: then it says nothing of the start.
        return ahead >= 0 && ahead <= RowPlacement.LargestJump(rate) ? ahead : 0;
    }

    public override void Take(RowStamp row, long distance) => _counter.Step(row.Counter, out _);

    public override bool TryFollow(RowStamp row) => _counter.TryFollow(row.Counter);
}
