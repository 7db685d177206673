namespace PulseStream.Signal;

/// <summary>What was measured by the end of one second; no verdict yet.</summary>
/// <param name="SecondIndex">Whole seconds since the recording's start.</param>
/// <param name="Light">Light, clipping and missing samples of this second alone.</param>
/// <param name="Fit">Red on infrared over the window; its <see cref="RatioFit.WindowSeconds"/> is 0 while the window is still filling.</param>
/// <param name="Pulse">Beats over the window.</param>
/// <param name="IsRestarted">Whether a gap or clipping has emptied the window within this second.</param>
public readonly record struct SignalSecond(long SecondIndex, SecondLight Light, RatioFit Fit, WindowPulse Pulse, bool IsRestarted);
