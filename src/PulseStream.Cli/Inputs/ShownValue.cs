using PulseStream.Readings;

namespace PulseStream.Cli.Inputs;

/// <summary>What an instrument showed at an instant; NaN where it showed nothing.</summary>
/// <param name="TimeSeconds">Seconds since the start.</param>
/// <param name="Spo2Percent">SpO2.</param>
/// <param name="PulsePerMinute">Pulse rate.</param>
/// <param name="PerfusionPercent">Perfusion.</param>
/// <param name="Reasons">What the instrument says against it.</param>
internal readonly record struct ShownValue(double TimeSeconds, double Spo2Percent, double PulsePerMinute, double PerfusionPercent, Reasons Reasons);
