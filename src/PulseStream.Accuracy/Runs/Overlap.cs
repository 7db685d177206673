namespace PulseStream.Accuracy.Runs;

/// <summary>What two courses have in common at a lag.</summary>
/// <param name="Seconds">Whole seconds of the reference at which both are known.</param>
/// <param name="Scatter">Variance of the difference over that of both courses, 0 to 2: 0 where they are the same but for a constant.</param>
internal readonly record struct Overlap(int Seconds, double Scatter)
{
    public static Overlap At(TimedValues device, TimedValues reference, double lag)
    {
        var (count, ofReference, ofDevice, ofDifference) = (0, default(Spread), default(Spread), default(Spread));
        for (var t = Math.Ceiling(reference.Times[0]); t <= reference.Times[^1]; t++)
        {
            var (expected, shown) = (reference.At(t), device.At(t + lag));
            if (!double.IsNaN(expected) && !double.IsNaN(shown))
            {
                count++;
                ofReference = ofReference.With(expected);
                ofDevice = ofDevice.With(shown);
                ofDifference = ofDifference.With(shown - expected);
            }
        }

        var both = ofReference.Squares(count) + ofDevice.Squares(count);
        return new(count, both > 0 ? ofDifference.Squares(count) / both : double.NaN);
    }

    private readonly record struct Spread(double Sum, double SquareSum)
    {
        public Spread With(double value) => new(Sum + value, SquareSum + (value * value));

        public double Squares(int count) => count == 0 ? 0 : Math.Max(0, SquareSum - (Sum * Sum / count));
    }
}
