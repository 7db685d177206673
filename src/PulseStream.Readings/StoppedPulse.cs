using PulseStream.Signal;

namespace PulseStream.Readings;

/// <summary>
/// Tells a finger that has left from light that has come to one that is still there: added light divides the pulse by as much
/// as it brightens the light, and takes no more of it. Air that drifts or flickers is not still, but it has no pulse.
/// </summary>
internal sealed class StoppedPulse(JudgeOptions options)
{
    private double fingerSize = double.NaN;
    private double logInfrared;
    private int weakSeconds;

    /// <summary>Whether another light than the finger's has been without its pulse for longer than a slow heart rests.</summary>
    public bool HasLeft => weakSeconds >= options.Absence.StoppedPulseSeconds;

    /// <summary>Takes over the pulse of a believed second.</summary>
    /// <param name="second">The second.</param>
    public void Remember(in SignalSecond second)
    {
        // Part of the pulse may have gone with a line.
        if (second.Fit.Lines == 0)
        {
            fingerSize = second.Fit.PulseSize;
            logInfrared = Math.Log(second.Light.InfraredCounts);
        }
    }

    /// <summary>Takes in every second, believed or not.</summary>
    /// <param name="second">The second.</param>
    /// <param name="isOther">Whether its light is another than the finger's.</param>
    public void See(in SignalSecond second, bool isOther) =>
        weakSeconds = isOther && IsBelow(second, options.Absence.WeakPulseShare) ? weakSeconds + 1 : 0;

    /// <summary>Whether a second has next to nothing of the pulse that the finger would have in its light.</summary>
    /// <param name="second">The second.</param>
    public bool IsNone(in SignalSecond second) => IsBelow(second, options.Absence.StoppedPulseShare);

    private double RiseOf(in SignalSecond second) => Math.Max(0, Math.Log(second.Light.InfraredCounts) - logInfrared);

    private bool IsBelow(in SignalSecond second, double share) =>
        second.Light.LevelSwing < share * fingerSize * Math.Exp(-RiseOf(second));
}
