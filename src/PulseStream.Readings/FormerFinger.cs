using PulseStream.Signal;

namespace PulseStream.Readings;

/// <summary>The pulse of a finger that has left. One that comes with the same pulse in the same light is that finger, and has shown before that it is one.</summary>
internal sealed class FormerFinger(JudgeOptions options)
{
    private double logHeight = double.NaN;
    private double ratio;
    private double periodSeconds;
    private double logInfrared;
    private double logRed;

    /// <summary>Takes over what a believed second looked like.</summary>
    public void Remember(in SignalSecond second)
    {
        if (second.Fit.Lines > 0)
        {
            return;
        }

        logHeight = Math.Log(second.Fit.PulseSize);
        ratio = second.Fit.Ratio;
        periodSeconds = second.Pulse.PeriodSeconds;
        logInfrared = Math.Log(second.Light.InfraredCounts);
        logRed = Math.Log(second.Light.RedCounts);
    }

    /// <summary>Whether the finger is back: its height, R and period, as bright in both lights.</summary>
    public bool IsBack(in SignalSecond second) =>
        second.Fit.Lines == 0
        && Math.Abs(Math.Log(second.Fit.PulseSize) - logHeight) < options.SameHeight
        && Math.Abs(second.Fit.Ratio - ratio) < options.SeparatedJump
        && Math.Abs(Math.Log(second.Pulse.PeriodSeconds / periodSeconds)) < options.SamePeriod
        && Math.Abs(Math.Log(second.Light.InfraredCounts) - logInfrared) < options.LeakRise
        && Math.Abs(Math.Log(second.Light.RedCounts) - logRed) < options.LeakRise;
}
