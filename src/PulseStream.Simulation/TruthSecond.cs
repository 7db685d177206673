using PulseStream.Simulation.Episodes;

namespace PulseStream.Simulation;

/// <summary>The truth about one second [Second, Second + 1) of a recording, counted by its stated rate.</summary>
/// <param name="Second">Whole seconds since the start.</param>
/// <param name="Spo2Percent">Arterial saturation in the middle of the second; NaN while nothing living is in the clip.</param>
/// <param name="PulsePerMinute">Pulse rate in the middle of the second, in true minutes; NaN likewise. An irregular rhythm keeps it as its long-run mean.</param>
/// <param name="PerfusionPercent">Of an ordinary beat in the middle of the second, movement and leaking light not counted; NaN likewise.</param>
/// <param name="Finger">Where the finger was, the worst within the second.</param>
/// <param name="Disturbances">All that touched the second.</param>
public sealed record TruthSecond(
    long Second,
    double Spo2Percent,
    double PulsePerMinute,
    double PerfusionPercent,
    FingerPlacement Finger,
    Disturbances Disturbances);
