using PulseStream.Signal;

namespace PulseStream.Readings;

/// <summary>Names a finger that is put on or taken off: a second in which it comes or goes swings by far more than its pulse, and begins or ends in air.</summary>
/// <param name="options">The limits.</param>
internal sealed class HandledFinger(JerkOptions options)
{
    // Further back than any recording reaches, and no difference to it overflows.
    private const long NeverAir = long.MinValue / 2;

    // Before any finger was seen, nothing tells a jerk from what shakes in the clip.
    private double largestSwing = double.NaN;
    private long airSecond = NeverAir;

    /// <summary>Takes over the pulse of a believed second.</summary>
    /// <param name="second">The second.</param>
    public void Remember(in SignalSecond second)
    {
        // Part of the pulse may have gone with a line.
        if (second.Fit.Lines == 0)
        {
            largestSwing = options.Pulses * second.Fit.PulseSize;
        }
    }

    /// <summary>The finger has left: the next one's pulse may be of any size.</summary>
    public void Forget() => largestSwing = double.IsNaN(largestSwing) ? largestSwing : options.TallestPulse;

    /// <summary>The reasons of a refused second, with movement among them where the second itself is jerked, and no finger where one comes or leaves.</summary>
    /// <param name="second">The second.</param>
    /// <param name="reasons">What it is refused for.</param>
    /// <param name="presence">Whether its light has left the finger's.</param>
    public Reasons With(in SignalSecond second, Reasons reasons, Presence presence)
    {
        if ((reasons & Reasons.NoFinger) != Reasons.None)
        {
            airSecond = second.SecondIndex;
        }

        if ((reasons & (Reasons.Settling | Reasons.Motion)) == Reasons.None || !IsJerked(second))
        {
            return reasons;
        }

        return reasons | Reasons.Motion
            | (second.SecondIndex - airSecond <= options.ComingSeconds ? Reasons.NoFinger : Reasons.None)
            | (presence.IsAway(second) ? presence.Absence(second) : Reasons.None);
    }

    // The window's own size tells nothing of the pulse: the jerk is in it.
    private bool IsJerked(in SignalSecond second) => second.Light.LevelSwing > largestSwing;
}
