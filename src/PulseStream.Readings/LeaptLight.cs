using PulseStream.Signal;

namespace PulseStream.Readings;

/// <summary>Light that leapt from one level to another: a lamp does, and a finger that comes half off at once; what shakes and what slips does not.</summary>
internal sealed class LeaptLight(JudgeOptions options)
{
    // Further back than any recording reaches, and no difference to it overflows.
    private const long NeverLeapt = long.MinValue / 2;
    private long leaptSecond = NeverLeapt;

    /// <summary>Takes in the light of every second, believed or not.</summary>
    /// <param name="second">The second.</param>
    /// <param name="logHeight">Logarithm of the calm pulse's size; NaN where none is known: no leap can then be told from a beat.</param>
    /// <param name="isBrighter">Whether the light is brighter than the calm one. For as long as it is, light that has leapt is still there; once it is not, windows still hold some of it.</param>
    public void See(in SignalSecond second, double logHeight, bool isBrighter)
    {
        var hasLeapt = Math.Abs(second.Fit.Leap) > LargestOfBeats(logHeight) || second.Fit.LeapBesidePulse != 0;
        if (hasLeapt || (isBrighter && IsIn(second)))
        {
            leaptSecond = second.SecondIndex;
        }
    }

    /// <summary>Leap that a beat may make: no lamp is known by one that is smaller. NaN where no pulse is known.</summary>
    /// <param name="logHeight">Logarithm of the calm pulse's size; NaN where none is known.</param>
    public double LargestOfBeats(double logHeight) => options.Lamp.LeapPulses * Math.Exp(logHeight);

    /// <summary>The finger has left: what leapt last was its going, and a lamp that stays on is in the light that the next one is compared with.</summary>
    public void Forget() => leaptSecond = NeverLeapt;

    /// <summary>Whether the window of a second may hold light that leapt.</summary>
    /// <param name="second">The second.</param>
    public bool IsIn(in SignalSecond second) => second.SecondIndex - leaptSecond < options.SettlingSeconds;

    /// <summary>The reasons of a refused second, with a lamp among them where it may be what is refused as movement or as a finger half off.</summary>
    /// <param name="second">The second.</param>
    /// <param name="reasons">What it is refused for.</param>
    public Reasons WithLamp(in SignalSecond second, Reasons reasons) =>
        (reasons & (Reasons.Motion | Reasons.Misplaced)) != Reasons.None
        && (reasons & Reasons.NoFinger) == Reasons.None
        && IsIn(second)
            ? reasons | Reasons.AmbientLight
            : reasons;
}
