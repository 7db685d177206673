namespace PulseStream.Sources.Csv;

/// <summary>
/// No counter: the time since the row before places each row, so a clock that drifts makes no gaps. Where the times are
/// written as coarsely as the samples follow each other, a single step says little; the expected time then follows the
/// times slowly, and a step within the rounding of the times is one sample.
/// </summary>
internal sealed class TimeClock(TimeScale scale) : RowClock
{
    // Rounding to a quarter of a period moves a step by a quarter at most: far enough from half a period to round right.
    private const double CoarsePeriods = 0.25;

    // Averages over about eight rows: quiet against rounding, quick against drift.
    private const double CoarseGain = 0.125;

    // Far beyond any recording, and well within a long.
    private const double FarthestSamples = 1e15;

    private readonly double _period = 1 / scale.Rate.Hz;
    private readonly double _gain = scale.RoundingSeconds * scale.Rate.Hz > CoarsePeriods ? CoarseGain : 1;
    private readonly double _slack = Math.Max(0.5 / scale.Rate.Hz, scale.RoundingSeconds);
    private bool _started;
    private double _expected;

    public override long Distance(RowStamp from, RowStamp to) => DistanceFor(to.Seconds - from.Seconds - _period);

    public override long DistanceTo(RowStamp row, long badBetween) => DistanceFor(row.Seconds - _expected);

    public override void Take(RowStamp row, long distance)
    {
        var predicted = _expected + ((distance - 1) * _period);
        _expected = _started ? predicted + _period + (_gain * (row.Seconds - predicted)) : row.Seconds + _period;
        _started = true;
    }

    private long DistanceFor(double late) => Math.Abs(late) <= _slack
        ? 1
        : 1 + (long)Math.Round(Math.Clamp(late * scale.Rate.Hz, -FarthestSamples, FarthestSamples));
}
