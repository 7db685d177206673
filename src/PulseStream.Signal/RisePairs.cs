namespace PulseStream.Signal;

/// <summary>Fronts that come in pairs, a full one and a weaker one, as medians of the pairs of a window.</summary>
/// <param name="PeriodSeconds">From one full front to the next, s.</param>
/// <param name="DelaySeconds">From a full front to the weaker one behind it, s.</param>
/// <param name="SlopeShare">Steepness of the weaker one over that of the full one.</param>
/// <param name="FootShare">Blood volume from which the weaker one rises, from the foot of the full one, 0, to its crest, 1.</param>
/// <param name="FrontSeconds">How long the full front is steep: width at half its slope, s.</param>
/// <param name="SecondFrontSeconds">The same of the weaker one.</param>
/// <param name="Scatter">Standard deviation of that share over itself, from the median of the differences.</param>
/// <param name="Contrast">How far the weaker ones are below the full ones in steepness, in standard errors of that.</param>
internal readonly record struct RisePairs(
    double PeriodSeconds,
    double DelaySeconds,
    double SlopeShare,
    double FootShare,
    double FrontSeconds,
    double SecondFrontSeconds,
    double Scatter,
    double Contrast)
{
    /// <summary>Standard deviation of the delays, s; 0 where the pairs are too few to tell.</summary>
    public double DelaySpreadSeconds { get; init; }

    /// <summary>The same of the periods they are measured in.</summary>
    public double IntervalSpreadSeconds { get; init; }

    /// <summary>Delay of the weaker front over the period.</summary>
    public double DelayShare => DelaySeconds / PeriodSeconds;
}
