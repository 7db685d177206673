using PulseStream.Accuracy.Statistics;

namespace PulseStream.Accuracy;

/// <summary>Which of two columns scatters, as a device's does, and which the other scatters around.</summary>
/// <remarks>
/// At a plateau the reference stands and the reading scatters: neighbouring pairs of a subject tell it, whatever the device's
/// scale, unless the device averages for longer. Without plateaus: what errs spreads more than what it errs about, unless the
/// device reads a little too high where saturation is low. Whole
/// numbers beside decimals look like a display beside a laboratory, and then both have to speak against it.
/// </remarks>
internal static class ColumnOrder
{
    // Neighbours of the same plateau; a step between plateaus is larger.
    private const double SamePlateau = 3;
    private const int FewestNeighbours = 30;

    // Share of neighbours between which one column steps farther; a reference that drifts and a device that averages reach
    // less. And by how many standard errors it is more than half.
    private const double ClearShare = 0.65;
    private const double ClearErrors = 2.6;

    // Odds of 20 to 1.
    private const double ClearLogOdds = 3;
    private const double ScaleErrors = 2;

    // A reading cannot be above the scale: where some are at its top, errors near it fall on one side only.
    private const double TopShare = 0.96;
    private const double FewAtTop = 0.01;

    /// <summary>Whether the reference looks like a reading, and the reading like a reference.</summary>
    /// <param name="pairs">A study, in the order of its rows.</param>
    /// <param name="highest">Top of the scale.</param>
    public static bool MayBeSwapped(IReadOnlyList<PairedReading> pairs, double highest)
    {
        var below = BelowTop(pairs, highest);
        var (farther, neighbours) = Steps(below);
        var excess = (farther - (neighbours / 2.0)) / (Math.Sqrt(neighbours) / 2);
        if (neighbours >= FewestNeighbours && excess < -ClearErrors)
        {
            return false;
        }

        var isDisplay = pairs.All(pair => IsWhole(pair.Reading)) && !pairs.All(pair => IsWhole(pair.Reference));
        return neighbours >= FewestNeighbours && excess > ClearErrors && farther > ClearShare * neighbours
            ? !isDisplay || SpreadSays(below)
            : !isDisplay && SpreadSays(below);
    }

    private static PairedReading[] BelowTop(IReadOnlyList<PairedReading> pairs, double highest) =>
        pairs.Count(pair => pair.Reading >= highest || pair.Reference >= highest) <= FewAtTop * pairs.Count
            ? [.. pairs]
            : [.. pairs.Where(pair => MeanOf(pair) <= TopShare * highest)];

    private static bool IsWhole(double value) => value == Math.Round(value);

    // Between how many neighbours the reference steps farther than the reading, and of how many.
    private static (int Farther, int Neighbours) Steps(PairedReading[] pairs)
    {
        double[] excess =
        [
            .. pairs.GroupBy(pair => pair.Subject, StringComparer.Ordinal).SelectMany(subject => subject.Zip(subject.Skip(1)))
                .Select(two => (Reference: Math.Abs(two.Second.Reference - two.First.Reference), Reading: Math.Abs(two.Second.Reading - two.First.Reading)))
                .Where(step => step.Reference <= SamePlateau && step.Reading <= SamePlateau && step.Reference != step.Reading)
                .Select(step => step.Reference - step.Reading),
        ];
        return (excess.Count(value => value > 0), excess.Length);
    }

    // E. J. G. Pitman, Biometrika 1939;31:9-12: the difference follows the mean of both where one spreads more. With right
    // columns and with swapped ones its slope lies equally far on either side of none; how far, the scatter tells. Where the
    // error falls with the reading as well, it is the device's scale.
    private static bool SpreadSays(PairedReading[] pairs)
    {
        PairedReading[] own =
        [
            .. pairs.GroupBy(pair => pair.Subject, StringComparer.Ordinal).SelectMany(subject =>
            {
                var (reference, reading) = (subject.Average(pair => pair.Reference), subject.Average(pair => pair.Reading));
                return subject.Select(pair => new PairedReading(pair.Subject, pair.Reference - reference, pair.Reading - reading));
            }),
        ];
        if (ErrorRegression.Of(own, MeanOf) is not { SlopeError: > 0 and var error } onMean
            || ErrorRegression.Of(own, pair => pair.Reading) is not { SlopeError: > 0 and var scaleError } onReading)
        {
            return false;
        }

        var expected = own.Sum(pair => pair.Error * pair.Error) / (2 * own.Sum(pair => MeanOf(pair) * MeanOf(pair)));
        return -2 * expected * onMean.Slope > ClearLogOdds * error * error && onReading.Slope > -ScaleErrors * scaleError;
    }

    private static double MeanOf(PairedReading pair) => (pair.Reference + pair.Reading) / 2;
}
