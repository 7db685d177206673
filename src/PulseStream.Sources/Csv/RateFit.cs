namespace PulseStream.Sources.Csv;

/// <summary>
/// Finds the sample rate from times that may be written coarsely, have gaps and stray values. A first period is the
/// median over windows of rows, which gaps and stray values do not move. It cuts the rows into stretches that fit it; the
/// period is the least-squares slope over the longest. Its uncertainty is the larger of three standard errors and what
/// rounding of the times can do at worst, and within it the rate is taken to be the simplest number: whole, else a half,
/// a third and so on.
/// </summary>
internal sealed class RateFit
{
    // Long enough that rounding to the resolution averages out, short enough to lie between most gaps.
    private const int LongestWindow = 32;

    private const double StandardErrors = 3;

    // Rounding makes mostly small errors and some large ones: 2 ms and 8 ms at 128 Hz with two decimals.
    private const double MediansOfSpread = 4;

    // Least squares over n points, each off by at most half a resolution, is off by at most 1.5 resolutions over n.
    private const double WorstOfRounding = 1.5;

    // Exact decimal times still carry the rounding of doubles.
    private const double SmallestUncertainty = 1e-9;

    private static readonly int[] Denominators = [1, 2, 3, 4, 5, 8, 10];

    private readonly List<(long Number, double Seconds)> _rows = [];

    // A unit of the last decimal: the finest seen, because zeros at the end may have been left out.
    private double _resolution = 1;

    /// <summary>
    /// The width within which rounding moves the times of the last fit, in seconds. It is no more than a unit of their
    /// last decimal, and nothing where each sample falls on a time that can be written: two decimals at 100 Hz.
    /// </summary>
    public double RoundingSeconds { get; private set; }

    public int Rows => _rows.Count;

    /// <summary>Sample rate of the last fit, in Hz, and half the width of what it may be.</summary>
    public (double Hz, double Uncertainty) Rate { get; private set; }

    /// <summary>Seconds from the first to the last row of the stretch that the last fit used.</summary>
    public double StretchSeconds { get; private set; }

    /// <param name="number">The counter, or the number of the row where there is none.</param>
    /// <param name="seconds">The time of the row.</param>
    /// <param name="resolution">How finely it is written; null where that cannot be seen.</param>
    public void Add(long number, double seconds, double? resolution)
    {
        _rows.Add((number, seconds));
        _resolution = Math.Min(_resolution, resolution ?? 0);
    }

    /// <returns>False where no two rows step forward in time.</returns>
    public bool TryFit()
    {
        if (FirstPeriod() is not { } period)
        {
            return false;
        }

        var stretch = LongestStretch(period);
        if (stretch.Count < 2)
        {
            return false;
        }

        StretchSeconds = stretch[^1].Seconds - stretch[0].Seconds;
        var (slope, error) = Slope(stretch);
        var hz = 1 / slope;
        Rate = slope > 0 && double.IsFinite(hz) ? (hz, Math.Max(hz * error / slope, SmallestUncertainty * hz)) : default;
        return Rate.Hz > 0;
    }

    /// <summary>The simplest number that the rate may be.</summary>
    public double SimplestHz()
    {
        foreach (var denominator in Denominators)
        {
            var simple = Math.Round(Rate.Hz * denominator) / denominator;
            if (Math.Abs(simple - Rate.Hz) <= Rate.Uncertainty)
            {
                return simple;
            }
        }

        return Rate.Hz;
    }

    private double? FirstPeriod()
    {
        var window = Math.Min(LongestWindow, _rows.Count - 1);
        var periods = new List<double>();
        for (var at = window; window > 0 && at < _rows.Count; at++)
        {
            var (steps, seconds) = (_rows[at].Number - _rows[at - window].Number, _rows[at].Seconds - _rows[at - window].Seconds);
            if (steps > 0 && seconds > 0)
            {
                periods.Add(seconds / steps);
            }
        }

        periods.Sort();
        return periods.Count == 0 ? null : periods[periods.Count / 2];
    }

    private List<(long Number, double Seconds)> LongestStretch(double period)
    {
        var slack = (period / 2) + StepSpread(period);
        var (first, longest) = (0, ..0);
        for (var at = 0; at < _rows.Count; at++)
        {
            if (at > 0 && (_rows[at].Number <= _rows[at - 1].Number || !(StepError(at, period) <= slack)))
            {
                first = at;
            }

            longest = at + 1 - first > longest.End.Value - longest.Start.Value ? first..(at + 1) : longest;
        }

        return _rows[longest];
    }

    // Times that all fall on their grid have steps without error, so that one missing sample still ends a stretch.
    private double StepSpread(double period)
    {
        var errors = Enumerable.Range(1, _rows.Count - 1).Select(at => StepError(at, period)).Order().ToArray();
        return Math.Min(_resolution, MediansOfSpread * errors[errors.Length / 2]);
    }

    private double StepError(int at, double period) =>
        Math.Abs(_rows[at].Seconds - _rows[at - 1].Seconds - ((_rows[at].Number - _rows[at - 1].Number) * period));

    private (double Slope, double Error) Slope(List<(long Number, double Seconds)> rows)
    {
        var (meanNumber, meanSeconds) = (rows.Average(row => row.Number - rows[0].Number), rows.Average(row => row.Seconds - rows[0].Seconds));
        var (square, product, rest) = (0.0, 0.0, 0.0);
        foreach (var row in rows)
        {
            var (x, y) = (row.Number - rows[0].Number - meanNumber, row.Seconds - rows[0].Seconds - meanSeconds);
            square += x * x;
            product += x * y;
            rest += y * y;
        }

        var slope = product / square;
        var farthest = rows.Max(row => Math.Abs(row.Seconds - rows[0].Seconds - meanSeconds - (slope * (row.Number - rows[0].Number - meanNumber))));
        RoundingSeconds = Math.Min(_resolution, 2 * farthest);
        var variance = Math.Max(rest - (slope * product), 0) / Math.Max(rows.Count - 2, 1);
        return (slope, Math.Max(StandardErrors * Math.Sqrt(variance / square), WorstOfRounding * _resolution / rows.Count));
    }
}
