namespace PulseStream.Signal;

/// <summary>The regression of red on infrared over one window of the pulse band.</summary>
/// <param name="WindowSeconds">Length of the window, s; 0 where there was none.</param>
/// <param name="Ratio">Ratio of ratios R, no unit; NaN without red.</param>
/// <param name="StandardError">Standard error of R from white noise and what the regression left over, in units of R.</param>
/// <param name="Disagreement">What red and infrared disagree by beyond white noise, in units of R; NaN without red.</param>
/// <param name="PulseSize">Root mean square of the infrared pulse, in units of the natural logarithm of light.</param>
/// <param name="NoiseSize">Root mean square that white noise alone would have there, same unit.</param>
/// <param name="IsMoving">Whether R changes within the window; <paramref name="Ratio"/> then speaks of its last quarter's start.</param>
/// <param name="Lag">What R changes by within half the window, where it is moving; else 0. From where it is read to the end it moves on by up to that much.</param>
/// <param name="Lines">Steady lines that were removed from both lights.</param>
/// <param name="IsRoomLight">Whether the strongest of them added as many counts to either channel, as room light does, whatever its phase.</param>
/// <param name="RoomLightSize">Amplitude of the room light that was removed as lines, as a share of infrared; 0 where none was.</param>
/// <param name="Newest">How both lights vary in the newest seconds, where they disagree; default where they agree.</param>
/// <param name="IsSeparated">Whether the pulse was told from a movement through the calm one; what the lights disagree by is then in the standard error.</param>
/// <param name="IsWithoutFirstWave">Whether the first wave of a slow pulse was taken away with breathing and R was read from the others.</param>
/// <param name="LineHz">Frequency of the strongest of the lines, Hz; of the line that could have been taken away, where <paramref name="WasPureLine"/>; 0 where there was neither.</param>
/// <param name="LinesExplain">Share of what the lights disagreed by, beyond white noise, as power, that the lines took away, or that line would have; 0 where there was neither.</param>
/// <param name="IsOneLine">Whether the lines are one that is not quite steady, all of one frequency as far as the window tells, but for what is slower than the pulse.</param>
/// <param name="IsPureLine">Whether that one line is all that disturbs: what moves, and a pulse, have harmonics.</param>
/// <param name="IsWideLine">Whether the strongest line drifts, so that more of it was taken away.</param>
/// <param name="OtherLightSize">Amplitude of what lines that are not as many counts of either light add to red beyond R times infrared, as a share of the light; 0 where none was.</param>
/// <param name="LightMix">Red over infrared, in the logarithm of light, of the one line that the pulse was told from; NaN where it was told from none. <see cref="RoomLightSize"/> is then its amplitude in infrared.</param>
/// <param name="Leap">Largest leap of both lights from one level to another within the newest second, natural logarithm of infrared; 0 where there was none, or none that means anything (<see cref="FingerSignal.IgnoreLeapsUpTo"/>).</param>
/// <param name="LeapBesidePulse">Largest such leap of red − R × infrared within the newest second, R being the known pulse's: nothing of the pulse is in that. 0 where there was none, or no pulse is known.</param>
/// <param name="WasPureLine">Whether what a pulse was told from could have been taken away as one pure line just as well; no line was then.</param>
/// <param name="IsWandering">Whether what the lights disagree by, before any pulse is known, walks at random: nothing pulses or moves in it.</param>
public readonly record struct RatioFit(
    int WindowSeconds,
    double Ratio,
    double StandardError,
    double Disagreement,
    double PulseSize,
    double NoiseSize,
    bool IsMoving,
    double Lag,
    int Lines,
    bool IsRoomLight,
    double RoomLightSize,
    LightScatter Newest,
    bool IsSeparated = false,
    bool IsWithoutFirstWave = false,
    double LineHz = 0,
    double LinesExplain = 0,
    bool IsOneLine = false,
    bool IsPureLine = false,
    bool IsWideLine = false,
    double OtherLightSize = 0,
    double LightMix = double.NaN,
    double Leap = 0,
    double LeapBesidePulse = 0,
    bool WasPureLine = false,
    bool IsWandering = false);
