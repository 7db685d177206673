using PulseStream.Signal;

namespace PulseStream.Readings;

/// <summary>The light of the last second that reached the converter's end stop: what is as bright is too bright still.</summary>
internal sealed class BrightLight
{
    // A pulse and a breath together move the light by a few percent.
    private const double Near = 0.05;
    private double logInfrared = double.NaN;
    private double logRed = double.NaN;

    /// <summary>Takes over the light of a second at the end stop.</summary>
    public void Remember(in SignalSecond second)
    {
        logInfrared = Math.Log(second.Light.InfraredCounts);
        logRed = Math.Log(second.Light.RedCounts);
    }

    /// <summary>Whether a second is as bright as that one, within pulse and breath; without red, infrared tells.</summary>
    public bool IsNear(in SignalSecond second) =>
        Math.Abs(Math.Log(second.Light.InfraredCounts) - logInfrared) < Near
        && !(Math.Abs(Math.Log(second.Light.RedCounts) - logRed) >= Near);
}
