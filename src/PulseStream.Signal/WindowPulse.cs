namespace PulseStream.Signal;

/// <summary>The beats of the window that ends with a second.</summary>
/// <param name="BeatCount">Beats found.</param>
/// <param name="RatePerMinute">Mean rate between the first and the last, 1/min; NaN with fewer than three.</param>
/// <param name="Irregularity">Root mean square of successive differences of intervals over the mean interval.</param>
/// <param name="Periodicity">Autocorrelation at the period, −1 to 1.</param>
/// <param name="PeriodSeconds">The period with which the window repeats, s; NaN where it does not.</param>
/// <param name="Agreement">Median correlation of a beat's front with the mean one, −1 to 1; NaN with fewer than two.</param>
/// <param name="FrontSteepness">Skewness of the slope: above 0 where blood comes faster than it goes.</param>
/// <param name="PerfusionPercent">Median trough to peak of a beat over the mean light, percent; NaN without beats or light.</param>
public readonly record struct WindowPulse(
    int BeatCount,
    double RatePerMinute,
    double Irregularity,
    double Periodicity,
    double PeriodSeconds,
    double Agreement,
    double FrontSteepness,
    double PerfusionPercent);
