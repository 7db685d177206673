using PulseStream.Signal;

namespace PulseStream.Readings;

/// <summary>The light of the last second that reached the converter's end stop: what is as bright is too bright still.</summary>
internal sealed class BrightLight(JudgeOptions options)
{
    // Light that each beat lifts into the end stop is back at it within the slowest pulse's interval.
    private const int SlowestBeatSeconds = 2;

    // A pulse and a breath together move the light by a few percent.
    private const double Near = 0.05;
    private int since = int.MaxValue;
    private double logInfrared = double.NaN;
    private double logRed = double.NaN;

    /// <summary>Whether a second is at the end stop. To be asked once a second.</summary>
    public bool Sees(in SignalSecond second)
    {
        if (second.Light.AtEndStopShare > options.AtEndStopShare)
        {
            since = 0;
            logInfrared = Math.Log(second.Light.InfraredCounts);
            logRed = Math.Log(second.Light.RedCounts);
            return true;
        }

        since = since == int.MaxValue ? since : since + 1;
        return false;
    }

    /// <summary>Whether a second is as bright as one at the end stop some seconds ago: what a breath lifts there comes back to it within a window.</summary>
    public bool IsTooBright(in SignalSecond second) =>
        since < SlowestBeatSeconds || (since <= options.SettlingSeconds && IsNear(second));

    /// <summary>Whether the light is so near to the end stop that the next pulse or breath lifts it there.</summary>
    public static bool IsNearEndStop(in SignalSecond second) => second.Light.BelowEndStop < Near / 2;

    // Without red, infrared tells.
    private bool IsNear(in SignalSecond second) =>
        Math.Abs(Math.Log(second.Light.InfraredCounts) - logInfrared) < Near
        && !(Math.Abs(Math.Log(second.Light.RedCounts) - logRed) >= Near);
}
