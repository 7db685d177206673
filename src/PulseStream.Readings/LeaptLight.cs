using PulseStream.Signal;

namespace PulseStream.Readings;

/// <summary>Light that leapt from one level to another a while ago: a lamp does, and a finger that comes half off at once; what shakes and what slips does not.</summary>
internal sealed class LeaptLight(JudgeOptions options)
{
    // Further back than any recording reaches, and no difference to it overflows.
    private long leaptSecond = long.MinValue / 2;

    /// <summary>Takes in the light of every second, believed or not.</summary>
    /// <param name="second">The second.</param>
    /// <param name="logHeight">Logarithm of the calm pulse's size; NaN where none is known, which hides what its own beats are.</param>
    public void See(in SignalSecond second, double logHeight)
    {
        if (Math.Abs(second.Fit.Leap) > options.Lamp.LeapPulses * Math.Exp(logHeight))
        {
            leaptSecond = second.SecondIndex;
        }
    }

    /// <summary>The reasons of a refused second, with a lamp among them where it may be what is refused as movement or as a finger half off.</summary>
    /// <param name="second">The second.</param>
    /// <param name="reasons">What it is refused for.</param>
    public Reasons WithLamp(in SignalSecond second, Reasons reasons) =>
        (reasons & (Reasons.Motion | Reasons.Misplaced)) != Reasons.None
        && (reasons & Reasons.NoFinger) == Reasons.None
        && second.SecondIndex - leaptSecond < options.SettlingSeconds
            ? reasons | Reasons.AmbientLight
            : reasons;
}
