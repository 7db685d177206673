using PulseStream.Signal;

namespace PulseStream.Readings;

/// <summary>What is wrong with the light of a second as it was received, before anything is asked of the pulse in it.</summary>
internal sealed class ReceivedLight(JudgeOptions options, Presence presence)
{
    // A gap that restarts the window takes two seconds and more; across two or three of them one has more than this.
    private const double RestartMissingShare = 0.2;

    // All but a few samples at the end stop: there is no beat left to see, the emitters shine straight in.
    private const double WholeShare = 0.98;
    // What sums of the same numbers may differ by.
    private const double RatioRounding = 1e-9;
    private readonly BrightLight brightLight = new(options);
    private readonly MissingRing missing = new();
    private int airSeconds;

    /// <summary>Whether air has been in the clip for so long that what comes next is another finger.</summary>
    public bool IsLongAir => airSeconds >= options.ForgottenSeconds;

    /// <summary>Whether a second is as bright as one at the end stop some seconds ago.</summary>
    /// <param name="second">The second.</param>
    public bool IsTooBright(in SignalSecond second) => brightLight.IsTooBright(second);

    /// <summary>Whether both lights are the same counts to the last one: two that have crossed a finger have a noise each.</summary>
    /// <param name="second">The second.</param>
    public static bool IsOneTwice(in SignalSecond second) =>
        second.Light.RedCounts == second.Light.InfraredCounts && Math.Abs(second.Fit.Ratio - 1) < RatioRounding;

    /// <summary>The reasons of a refused second, with the end stop among them where its light has gone there: by itself the change is named for what comes past the finger, or for a finger that has left.</summary>
    /// <param name="second">The second.</param>
    /// <param name="reasons">What it is refused for.</param>
    public Reasons WithEndStop(in SignalSecond second, Reasons reasons) =>
        BrightLight.IsNearEndStop(second) && presence.IsAway(second) ? reasons | Reasons.Saturated : reasons;

    /// <summary>The reasons to refuse a second for its light alone. To be asked once a second.</summary>
    /// <param name="second">The second.</param>
    public Reasons ReasonsOf(in SignalSecond second)
    {
        var light = second.Light;
        if (missing.Add(light.MissingShare) > options.MissingWindowShare || light.MissingShare > options.MissingShare
            || (second.IsRestarted && light.MissingShare > RestartMissingShare))
        {
            return Reasons.MissingSamples;
        }

        if (brightLight.Sees(second))
        {
            return Reasons.Saturated | (presence.IsOpenAir(second) || light.AtEndStopShare > WholeShare ? Reasons.NoFinger : Reasons.None);
        }

        airSeconds = presence.IsOpenAir(second) ? airSeconds + 1 : 0;
        if (airSeconds > 0)
        {
            return presence.Absence(second);
        }

        return light.AmbientCounts > options.AmbientShare * light.InfraredCounts
            || light.AmbientSwing > options.AmbientSwingShare * light.InfraredCounts
                ? Reasons.AmbientLight
                : Reasons.None;
    }
}
