namespace PulseStream.Accuracy.Statistics;

/// <summary>A straight line of the error over a value: whether a device errs otherwise where saturation is low.</summary>
/// <param name="Intercept">Error at the value 0.</param>
/// <param name="Slope">Error gained for one unit of the value.</param>
/// <param name="SlopeError">Standard error of the slope, by leaving out one subject at a time; null where it is not known.</param>
/// <param name="SlopeInterval">Interval of the slope; null likewise.</param>
public sealed record ErrorRegression(double Intercept, double Slope, double? SlopeError, ConfidenceInterval? SlopeInterval)
{
    /// <summary>The line by least squares.</summary>
    /// <param name="pairs">The pairs.</param>
    /// <param name="valueOf">What the error is laid over: the reference as a rule.</param>
    /// <returns>Null where all values are the same.</returns>
    public static ErrorRegression? Of(IEnumerable<PairedReading> pairs, Func<PairedReading, double> valueOf)
    {
        Sums[] subjects =
        [
            .. pairs.GroupBy(pair => pair.Subject, StringComparer.Ordinal)
                .OrderBy(subject => subject.Key, StringComparer.Ordinal)
                .Select(subject => subject.Aggregate(default(Sums), (sums, pair) => sums + new Sums(valueOf(pair), pair.Error))),
        ];
        var total = subjects.Aggregate(default(Sums), (sums, subject) => sums + subject);
        if (!total.HasSpread)
        {
            return null;
        }

        var without = subjects.Select(subject => total - subject).ToArray();
        if (subjects.Length < 3 || !without.All(sums => sums.HasSpread))
        {
            return new(total.Intercept, total.Slope, null, null);
        }

        var slopes = without.Select(sums => sums.Slope).ToArray();
        var mean = slopes.Average();
        var error = Math.Sqrt(slopes.Sum(slope => Math.Pow(slope - mean, 2)) * (slopes.Length - 1) / slopes.Length);
        return new(total.Intercept, total.Slope, error, ConfidenceInterval.Around(total.Slope, StudentT.TwoSided95(slopes.Length - 1) * error));
    }

    private readonly record struct Sums(double N, double X, double Y, double XX, double XY)
    {
        public Sums(double x, double y)
            : this(1, x, y, x * x, x * y)
        {
        }

        // Sums of squares of values up to a few hundred lose their last digits to rounding, no more.
        public bool HasSpread => (XX * N) - (X * X) > 1e-9 * XX * N;

        public double Slope => ((XY * N) - (X * Y)) / ((XX * N) - (X * X));

        public double Intercept => (Y - (Slope * X)) / N;

        public static Sums operator +(Sums a, Sums b) => new(a.N + b.N, a.X + b.X, a.Y + b.Y, a.XX + b.XX, a.XY + b.XY);

        public static Sums operator -(Sums a, Sums b) => new(a.N - b.N, a.X - b.X, a.Y - b.Y, a.XX - b.XX, a.XY - b.XY);
    }
}
