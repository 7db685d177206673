namespace PulseStream.Signal;

/// <summary>The beats of the window that ends with a second. Rate and irregularity speak of <see cref="SignalOptions.AveragingSeconds"/>, the rest of the window that R was read from.</summary>
/// <param name="BeatCount">Beats found in the window that R was read from.</param>
/// <param name="RatePerMinute">Mean rate of the beats of the averaging time that ends with the second, 1/min; NaN with fewer than four.</param>
/// <param name="RateSpreadPerMinute">What an equally fair way of counting the same beats may differ by from it, either way, 1/min.</param>
/// <param name="Irregularity">Root mean square of successive differences of intervals over the mean interval.</param>
/// <param name="Periodicity">Autocorrelation at the period, −1 to 1.</param>
/// <param name="PeriodSeconds">The period with which the window repeats, s; NaN where it does not.</param>
/// <param name="Agreement">Lower quartile of the beats' correlations with the mean of the others, −1 to 1; NaN with fewer than two.</param>
/// <param name="FrontSteepness">Skewness of the slope: above 0 where blood comes faster than it goes.</param>
/// <param name="Crest">Skewness of blood volume: above 0 where it is high for a shorter time than low.</param>
/// <param name="ThirdWaveShare">Amplitude of the third harmonic over that of the first, no unit; NaN with too few beats, and where a known pulse has a steep front.</param>
/// <param name="BreathingShare">What breathes beside the wave, over the wave, root mean squares; NaN where the pulse is known.</param>
/// <param name="UnsteadyShare">What three harmonics of one steady rate leave of the wave, white noise included, over the wave, root mean squares; NaN where the pulse is known or has no third harmonic, the window is short or nothing repeats.</param>
/// <param name="PerfusionPercent">Median trough to peak of a beat over the mean light, percent; NaN without beats or light.</param>
/// <param name="FrequencyHz">Root mean square frequency of the wave, Hz: a pulse's rate and more, for its harmonics.</param>
/// <param name="PeriodicityOfTwo">Autocorrelation at twice the period; 0 where it is not known.</param>
/// <param name="HasSecondWaves">Whether one second wave, and no more, was seen behind the front of each beat.</param>
public readonly record struct WindowPulse(
    int BeatCount,
    double RatePerMinute,
    double RateSpreadPerMinute,
    double Irregularity,
    double Periodicity,
    double PeriodSeconds,
    double Agreement,
    double FrontSteepness,
    double Crest,
    double ThirdWaveShare,
    double BreathingShare,
    double UnsteadyShare,
    double PerfusionPercent,
    double FrequencyHz,
    double PeriodicityOfTwo = 0,
    bool HasSecondWaves = false);
