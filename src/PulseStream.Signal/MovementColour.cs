namespace PulseStream.Signal;

/// <summary>The colour of what moves, taken away: each point less what the points before it tell of it.</summary>
internal sealed class MovementColour
{
    private const int Order = 8;
    private const double White = 1e-3;
    private readonly double[] covariances = new double[Order + 1];
    private readonly double[] weights = new double[Order + 1];
    private readonly double[] former = new double[Order + 1];

    public static int Lead => Order;

    public void Learn(ReadOnlySpan<double> rest)
    {
        for (var lag = 0; lag <= Order; lag++)
        {
            var sum = 0.0;
            for (var n = lag; n < rest.Length; n++)
            {
                sum += rest[n] * rest[n - lag];
            }

            covariances[lag] = sum;
        }

        weights.AsSpan().Clear();
        var error = covariances[0] * (1 + White);
        if (!(error > 0))
        {
            return;
        }

        for (var order = 1; order <= Order; order++)
        {
            var sum = covariances[order];
            for (var k = 1; k < order; k++)
            {
                sum -= weights[k] * covariances[order - k];
            }

            var reflection = sum / error;
            weights.CopyTo(former, 0);
            weights[order] = reflection;
            for (var k = 1; k < order; k++)
            {
                weights[k] = former[k] - (reflection * former[order - k]);
            }

            error *= 1 - (reflection * reflection);
        }
    }

    public void Flatten(ReadOnlySpan<double> points, Span<double> flat)
    {
        for (var n = Order; n < points.Length; n++)
        {
            var sum = points[n];
            for (var k = 1; k <= Order; k++)
            {
                sum -= weights[k] * points[n - k];
            }

            flat[n - Order] = sum;
        }
    }
}
