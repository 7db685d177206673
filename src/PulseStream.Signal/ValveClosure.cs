namespace PulseStream.Signal;

/// <summary>When the second wave of a beat comes: the aortic valve closes, and what it throws back reaches the finger.</summary>
/// <remarks>The valve closes 413 ms less 1.7 ms for each beat a minute after it opens (Weissler, Harris, Schoenfeld, Circulation 1968;37:149); within a tenth of a second of that its wave is here.</remarks>
internal static class ValveClosure
{
    private const double SlowestEjectionSeconds = 0.413;
    private const double EjectionSecondsPerRate = 0.0017;
    private const double WaveSeconds = 0.1;

    // The heart relaxes for this long at least before it can fill and beat again.
    private const double RelaxationSeconds = 0.05;

    /// <summary>From a beat's front to the latest front of its second wave, s.</summary>
    /// <param name="intervalSeconds">The interval of the beats, s.</param>
    public static double LatestWaveSeconds(double intervalSeconds) => EjectionSeconds(intervalSeconds) + WaveSeconds;

    /// <summary>From a beat's front to the soonest one of another, s.</summary>
    /// <param name="intervalSeconds">The interval of the beats, s.</param>
    public static double SoonestBeatSeconds(double intervalSeconds) => EjectionSeconds(intervalSeconds) + RelaxationSeconds;

    private static double EjectionSeconds(double intervalSeconds) => SlowestEjectionSeconds - (EjectionSecondsPerRate * 60 / intervalSeconds);
}
