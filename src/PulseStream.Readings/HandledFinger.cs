using PulseStream.Signal;

namespace PulseStream.Readings;

/// <summary>Names a finger that is put on or taken off: a second in which it comes or goes swings by far more than its pulse, and begins or ends in air.</summary>
internal sealed class HandledFinger
{
    // The pulse itself swings by its own size within a second, a slow one by half as much again.
    private const double JerkPulses = 2.5;

    // A finger is on within a second, which may fall on two.
    private const int ComingSeconds = 2;
    private double pulseSize = double.NaN;
    private int sinceAir = int.MaxValue;

    /// <summary>Takes over the pulse of a believed second.</summary>
    /// <param name="second">The second.</param>
    public void Remember(in SignalSecond second)
    {
        // Part of the pulse may have gone with a line.
        if (second.Fit.Lines == 0)
        {
            pulseSize = second.Fit.PulseSize;
        }
    }

    /// <summary>The reasons of a refused second, with movement among them where the second itself is jerked, and no finger where one comes or leaves.</summary>
    /// <param name="second">The second.</param>
    /// <param name="reasons">What it is refused for.</param>
    /// <param name="presence">Whether its light has left the finger's.</param>
    public Reasons With(in SignalSecond second, Reasons reasons, Presence presence)
    {
        sinceAir = (reasons & Reasons.NoFinger) != Reasons.None ? 0 : sinceAir == int.MaxValue ? sinceAir : sinceAir + 1;
        if ((reasons & (Reasons.Settling | Reasons.Motion)) == Reasons.None || !(second.Light.LevelSwing > JerkPulses * pulseSize))
        {
            return reasons;
        }

        return reasons | Reasons.Motion
            | (sinceAir <= ComingSeconds ? Reasons.NoFinger : Reasons.None)
            | (presence.IsAway(second) ? presence.Absence(second) : Reasons.None);
    }
}
