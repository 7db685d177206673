using PulseStream.Readings;
using PulseStream.Samples;

namespace PulseStream.Accuracy.Calibration;

/// <summary>A calibration curve fitted to pairs, with what it promises for people who were not among them.</summary>
public sealed class CurveFit
{
    // What a third power cannot follow is not blood.
    private static readonly int[] Degrees = [1, 2, 3];

    // With fewer, leaving one out says next to nothing about the next person.
    private const int FewestSubjects = 5;

    // A saturation that hardly moves tells no slope.
    private const double NarrowestPoints = 10;

    private CurveFit(IReadOnlyList<RatioPair> pairs, RobustFit fit, IReadOnlyList<UnseenSubjects> tried, UnseenSubjects chosen)
    {
        Pairs = pairs;
        Coefficients = fit.Coefficients;
        Weights = fit.Weights;
        Tried = tried;
        Chosen = chosen;
        (From, To) = RobustFit.RangeOf(pairs, fit.Weights);
        Subjects = pairs.Select(pair => pair.Subject).Distinct(StringComparer.Ordinal).Count();
    }

    /// <summary>What it was fitted to.</summary>
    public IReadOnlyList<RatioPair> Pairs { get; }

    /// <summary>Coefficients in ascending powers of R.</summary>
    public IReadOnlyList<double> Coefficients { get; }

    /// <summary>Weight of each pair, 0 to 1; 0 is an outlier.</summary>
    public IReadOnlyList<double> Weights { get; }

    /// <summary>The degrees tried, each with what it promises.</summary>
    public IReadOnlyList<UnseenSubjects> Tried { get; }

    /// <summary>The degree taken.</summary>
    public UnseenSubjects Chosen { get; }

    /// <summary>Lowest R that was no outlier.</summary>
    public double From { get; }

    /// <summary>Highest R that was no outlier.</summary>
    public double To { get; }

    /// <summary>How many subjects.</summary>
    public int Subjects { get; }

    /// <summary>Pairs left aside.</summary>
    public int Outliers => Weights.Count(weight => weight == 0);

    /// <summary>Fits a curve.</summary>
    /// <param name="pairs">Pairs of ratio and reference.</param>
    /// <param name="place">The file's name, for messages.</param>
    /// <exception cref="BadInputException">They do not tell a curve.</exception>
    public static CurveFit Of(IReadOnlyList<RatioPair> pairs, string place)
    {
        ArgumentNullException.ThrowIfNull(pairs);
        Check(pairs, place);
        UnseenSubjects[] tried = [.. Degrees.Select(degree => UnseenSubjects.Of(pairs, KeptIn(pairs), degree)).OfType<UnseenSubjects>()];
        if (tried.Length == 0)
        {
            throw NoCurve(place, "without one of the subjects the others do not tell a curve");
        }

        var chosen = Choose(tried);
        if (RobustFit.Of(pairs, chosen.Degree) is not { } fit)
        {
            throw NoCurve(place, "the pairs do not tell a curve");
        }

        CheckOutcome(pairs, fit, place);
        return new(pairs, fit, tried, chosen);
    }

    /// <summary>SpO2 that the curve gives.</summary>
    /// <param name="ratio">Ratio of ratios.</param>
    public double PercentAt(double ratio) => FallingPolynomial.At(Coefficients, ratio);

    /// <summary>The curve as every command takes it.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="source">Where the pairs come from.</param>
    public CalibrationCurve ToCurve(string name, string source) =>
        CalibrationCurve.OfPolynomial(name, [.. Coefficients], From, To, Chosen.Arms, source);

    // Degrees are compared over the same pairs. What no degree takes for an outlier of its own is kept, so that a curve
    // too stiff for the pairs cannot throw out what speaks against it.
    private static bool[] KeptIn(IReadOnlyList<RatioPair> pairs)
    {
        double[][] weights = [.. Degrees.Select(degree => RobustFit.Of(pairs, degree)?.Weights).OfType<double[]>()];
        return [.. pairs.Select((_, i) => weights.Any(weight => weight[i] > 0))];
    }

    // A further power has to pay: what it gains on subjects left out must be more than chance moves it.
    private static UnseenSubjects Choose(UnseenSubjects[] tried)
    {
        var chosen = tried[0];
        foreach (var next in tried.Skip(1))
        {
            chosen = next.IsClearlyBetterThan(chosen) ? next : chosen;
        }

        return chosen;
    }

    private static void Check(IReadOnlyList<RatioPair> pairs, string place)
    {
        var subjects = pairs.Select(pair => pair.Subject).Distinct(StringComparer.Ordinal).Count();
        if (subjects < FewestSubjects)
        {
            throw new BadInputException(place, $"it holds {subjects} subject{(subjects == 1 ? "" : "s")}, and a curve for people who are not among them needs {FewestSubjects} or more", "Add pairs of other subjects and run again");
        }

        var (low, high) = (pairs.Min(pair => pair.Reference), pairs.Max(pair => pair.Reference));
        if (high - low < NarrowestPoints)
        {
            throw new BadInputException(place, $"the references span {low:0.##} to {high:0.##} %, and a slope needs {NarrowestPoints} points or more", "Add pairs at lower saturations and run again");
        }

        if (pairs.Min(pair => pair.Ratio) == pairs.Max(pair => pair.Ratio))
        {
            throw new BadInputException(place, "every ratio is the same", "Check the column 'ratio' and run again");
        }
    }

    // A curve that explains next to nothing was forced to fall: red and infrared exchanged, or columns that do not belong together.
    private static void CheckOutcome(IReadOnlyList<RatioPair> pairs, RobustFit fit, string place)
    {
        var kept = pairs.Where((_, i) => fit.Weights[i] > 0).ToArray();
        var (from, to) = RobustFit.RangeOf(pairs, fit.Weights);
        var fall = FallingPolynomial.At(fit.Coefficients, from) - FallingPolynomial.At(fit.Coefficients, to);
        var span = kept.Max(pair => pair.Reference) - kept.Min(pair => pair.Reference);
        if (!(fall > span / 4))
        {
            throw NoCurve(place, "saturation does not fall as the ratio rises");
        }
    }

    private static BadInputException NoCurve(string place, string problem) =>
        new(place, problem, "Check that 'ratio' is red over infrared and belongs to the 'reference' beside it, and run again");
}
