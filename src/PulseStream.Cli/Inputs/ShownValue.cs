using PulseStream.Readings;

namespace PulseStream.Cli.Inputs;

/// <summary>What an instrument showed at an instant; NaN where it showed nothing.</summary>
/// <param name="TimeSeconds">Seconds since the start.</param>
/// <param name="Spo2Percent">SpO2.</param>
/// <param name="PulsePerMinute">Pulse rate.</param>
/// <param name="PerfusionPercent">Perfusion.</param>
/// <param name="Reasons">What the instrument says against it.</param>
internal readonly record struct ShownValue(double TimeSeconds, double Spo2Percent, double PulsePerMinute, double PerfusionPercent, Reasons Reasons)
{
    // Some displays change every other second; what is older than this is no longer shown.
    private const double DisplayStandsSeconds = 2;

    // The minute that a sitting takes, behind the second in which it came: the instrument has waited until the value was steady.
    private const double SpotCheckStandsSeconds = 61;

    /// <summary>Whether it is the one value of a measurement that the instrument has finished, and not what its display showed just then.</summary>
    public bool IsSpotCheck { get; init; }

    /// <summary>What a second has to end within of the value for the value to stand for it.</summary>
    public double StandsSeconds => IsSpotCheck ? SpotCheckStandsSeconds : DisplayStandsSeconds;

    /// <summary>The last whole second that it stands for.</summary>
    public long LastSecond => (long)Math.Floor(TimeSeconds + StandsSeconds - DisplayStandsSeconds);
}
