using PulseStream.Accuracy.Runs;

namespace PulseStream.Accuracy.Responses;

/// <summary>Finds how an instrument followed changes.</summary>
public static class StepResponses
{
    // A change that the instrument shows much later, or earlier, was another one.
    private const double LatestSeconds = 90;
    private const double EarliestSeconds = -5;

    // A running mean of length T goes from 10 to 90 % in 0.8 T.
    private const double RiseOfMean = 0.8;

    /// <summary>The responses of one quantity, in order of time.</summary>
    /// <param name="course">What the instrument showed.</param>
    /// <param name="quantity">Saturation or pulse rate.</param>
    /// <param name="reference">What a reference showed; null where there is none.</param>
    /// <param name="stepsAt">When the truth jumped, in seconds, where it is told.</param>
    public static IReadOnlyList<StepResponse> Of(TimedValues course, Quantity quantity, TimedValues? reference, IReadOnlyList<double> stepsAt)
    {
        var causes = reference is null ? [] : Transition.Of(reference, quantity);
        return [.. Transition.Of(course, quantity).Select(way => Of(way, quantity, CauseOf(way, causes), ToldBefore(way, stepsAt)))];
    }

    private static StepResponse Of(Transition way, Quantity quantity, Transition? cause, double? told)
    {
        var at = told ?? cause?.HalfWay ?? way.Onset;
        var own = Math.Sqrt(Math.Max(0, Math.Pow(way.RiseSeconds, 2) - Math.Pow(cause?.RiseSeconds ?? 0, 2)));
        return new(quantity, at, way.From, way.To, way.HalfWay - at, way.RiseSeconds, way.Overshoot, own / RiseOfMean);
    }

    private static Transition? CauseOf(Transition way, IReadOnlyList<Transition> causes) => causes
        .Where(cause => Math.Sign(cause.To - cause.From) == Math.Sign(way.To - way.From)
            && way.HalfWay - cause.HalfWay is >= EarliestSeconds and <= LatestSeconds)
        .MinBy(cause => Math.Abs(way.HalfWay - cause.HalfWay));

    private static double? ToldBefore(Transition way, IReadOnlyList<double> stepsAt) => stepsAt
        .Where(at => way.HalfWay - at is >= 0 and <= LatestSeconds)
        .Select(at => (double?)at)
        .DefaultIfEmpty(null)
        .Max();
}
