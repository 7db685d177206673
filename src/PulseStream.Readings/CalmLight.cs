using PulseStream.Signal;

namespace PulseStream.Readings;

/// <summary>The steady light of both channels while the finger could be believed, and what has come to it since.</summary>
internal sealed class CalmLight(JudgeOptions options)
{
    // Light is let brighten by 0.2 % a second without a word.
    private const double BrighteningPerSecond = 0.002;

    // Equal counts are equal to within rounding; the calm level that they are counted from is known to a few thousandths.
    private const double EqualCountsShare = 0.04;
    private const double LevelError = 0.004;
    private const double EqualSharesShare = 0.1;
    private const double AlikeShare = 0.8;

    // A lamp is on within a second, which may fall on two; what comes more slowly may be a finger that slips.
    private const double StepShare = 0.3;

    private const int LongestWindow = 16;
    private readonly double[] infraredLevels = new double[LongestWindow];
    private readonly double[] redLevels = new double[LongestWindow];
    private int levelCount;
    private double largestStep;
    private double logInfrared;
    private double logRed;
    private (int WindowSeconds, double Infrared, double Red) newest = (-1, 0, 0);

    /// <summary>Takes in the light of every second, believed or not.</summary>
    public void See(in SignalSecond second)
    {
        var infrared = Math.Log(second.Light.InfraredCounts);
        if (levelCount > 0)
        {
            largestStep = Math.Max(largestStep, infrared - infraredLevels[(levelCount - 1) % LongestWindow]);
        }

        infraredLevels[levelCount % LongestWindow] = infrared;
        redLevels[levelCount % LongestWindow] = Math.Log(second.Light.RedCounts);
        levelCount++;
        newest.WindowSeconds = -1;
    }

    /// <summary>The first believed second of a finger: its light is what later light is compared with.</summary>
    public void Settle(in SignalSecond second)
    {
        largestStep = 0;
        logInfrared = Math.Log(second.Light.InfraredCounts);
        logRed = Math.Log(second.Light.RedCounts);
    }

    /// <summary>A further believed second: darker light is followed at once, brighter light slowly. Where it is jerked, in proportions that by chance are blood's, there is no level to follow.</summary>
    /// <param name="second">The second.</param>
    /// <param name="pulseSize">Size of the pulse as it was before: that of a window with a jerk in it is the jerk's.</param>
    public void Follow(in SignalSecond second, double pulseSize)
    {
        largestStep = 0;
        if (second.Light.LevelSwing > options.Jerk.Pulses * Math.Min(second.Fit.PulseSize, pulseSize))
        {
            return;
        }

        logInfrared = Math.Min(logInfrared + BrighteningPerSecond, Math.Log(second.Light.InfraredCounts));
        logRed = Math.Min(logRed + BrighteningPerSecond, Math.Log(second.Light.RedCounts));
    }

    /// <summary>Whether infrared is as bright as it was.</summary>
    public bool IsAsBright(in SignalSecond second) =>
        Math.Abs(Math.Log(second.Light.InfraredCounts) - logInfrared) < options.LeakRise;

    /// <summary>Whether light has come to the calm light by more than the pulse and what goes on beside it move it, and not by a jerk.</summary>
    /// <param name="second">The second.</param>
    /// <param name="logHeight">Logarithm of the calm pulse's size.</param>
    public bool HasMoved(in SignalSecond second, double logHeight) =>
        RiseOf(second) > Math.Max(options.LeakRise, options.LeakRisePulses * Math.Exp(logHeight))
        && second.Light.LevelSwing < options.Jerk.Swing;

    /// <summary>Rise of the channel that rose more, as a logarithm.</summary>
    public double RiseOf(in SignalSecond second)
    {
        var infrared = Math.Log(second.Light.InfraredCounts) - logInfrared;
        var red = Math.Log(second.Light.RedCounts) - logRed;
        return Math.Max(double.IsNaN(infrared) ? 0 : infrared, double.IsNaN(red) ? 0 : red);
    }

    /// <summary>Change of the channel that changed more, brighter or darker, as a logarithm: of the second itself or of the whole window that it is read from.</summary>
    public double ChangeOver(in SignalSecond second)
    {
        var rises = RisesOver(second.Fit.WindowSeconds);
        var own = Math.Max(Math.Abs(Math.Log(second.Light.InfraredCounts) - logInfrared), Math.Abs(Math.Log(second.Light.RedCounts) - logRed));
        return Math.Max(own, Math.Max(Math.Abs(rises.Infrared), Math.Abs(rises.Red)));
    }

    /// <summary>Mean rises over a window, as logarithms: its pulse is divided by the light of the whole window.</summary>
    /// <param name="windowSeconds">Length of the window that ends with the second seen last.</param>
    private (double Infrared, double Red) RisesOver(int windowSeconds)
    {
        var levels = LevelsOver(windowSeconds);
        return (levels.Infrared - logInfrared, levels.Red - logRed);
    }

    /// <summary>Whether light has come past the finger: added light shrinks the pulse by as much as it brightens the light.</summary>
    /// <param name="second">The second.</param>
    /// <param name="logHeight">Logarithm of the calm pulse's size.</param>
    public bool HasLeaked(in SignalSecond second, double logHeight)
    {
        var rises = RisesOver(second.Fit.WindowSeconds);
        var shrink = logHeight - Math.Log(second.Fit.PulseSize);

        // A tall pulse itself moves the mean of a window that holds no whole number of its beats.
        return Math.Max(rises.Infrared, rises.Red) > Math.Max(options.LeakRise, options.LeakRisePulses * second.Fit.PulseSize) && shrink > options.LeakShrinkShare * Math.Max(rises.Infrared, 0);
    }

    /// <summary>Whether so much light has come to a window that its pulse is not the calm one's: beside a line or a movement how much of the pulse is left is not known well enough to tell a leak by.</summary>
    public bool HasRisenOver(in SignalSecond second)
    {
        var rises = RisesOver(second.Fit.WindowSeconds);
        return Math.Max(rises.Infrared, rises.Red) > Math.Max(options.Lamp.LeakRiseBesideLines, options.LeakRisePulses * second.Fit.PulseSize);
    }

    /// <summary>Mean levels over those seconds of a window that have any light, natural logarithms of counts.</summary>
    /// <param name="windowSeconds">Length of the window that ends with the second seen last.</param>
    public (double Infrared, double Red) LevelsOver(int windowSeconds)
    {
        // Asked for the same window several times a second.
        if (windowSeconds != newest.WindowSeconds)
        {
            newest = MeanOver(windowSeconds);
        }

        return (newest.Infrared, newest.Red);
    }

    private (int WindowSeconds, double Infrared, double Red) MeanOver(int windowSeconds)
    {
        var (infrared, red, count) = (0.0, 0.0, 0);
        for (var back = 1; back <= Math.Min(Math.Min(windowSeconds, levelCount), LongestWindow); back++)
        {
            var place = (levelCount - back) % LongestWindow;
            if (!double.IsNaN(infraredLevels[place]))
            {
                infrared += infraredLevels[place];
                red += redLevels[place];
                count++;
            }
        }

        return (windowSeconds, infrared / count, red / count);
    }

    /// <summary>What the light that has come is: room light adds the same counts to both channels, at once; emitters' light past a finger adds to each a share of what it emits, which may by chance be as many counts.</summary>
    /// <param name="second">The second.</param>
    /// <param name="hasLeapt">Whether it came at once, as a lamp does and a finger that slips does not.</param>
    public Reasons CauseOf(in SignalSecond second, bool hasLeapt)
    {
        var infrared = second.Light.InfraredCounts - Math.Exp(logInfrared);
        var red = second.Light.RedCounts - Math.Exp(logRed);
        var largest = Math.Max(Math.Abs(infrared), Math.Abs(red));
        var tolerance = (EqualCountsShare * largest) + (LevelError * Math.Max(second.Light.InfraredCounts, second.Light.RedCounts));
        return Math.Abs(infrared - red) > tolerance ? (IsAlike(infrared, red) && !IsGradual(second) && HasSettled() ? Reasons.AmbientLight | Reasons.Misplaced : Reasons.Misplaced)
            : hasLeapt && !IsEqualShare(second) ? Reasons.AmbientLight
            : Reasons.AmbientLight | Reasons.Misplaced;
    }

    // Channels are amplified each for itself, and dark samples that are taken off inside an instrument may leave some of a lamp
    // in one: what comes at once and is of the order of as many counts may be a lamp, or a finger half off.
    private static bool IsAlike(double infrared, double red) => Math.Min(infrared, red) > AlikeShare * Math.Max(infrared, red);

    private bool IsGradual(in SignalSecond second) => largestStep < StepShare * (Math.Log(second.Light.InfraredCounts) - logInfrared);

    // A slip that has just begun has come within a second as well; it goes on.
    private bool HasSettled() =>
        levelCount > 1
        && Math.Abs(infraredLevels[(levelCount - 1) % LongestWindow] - infraredLevels[(levelCount - 2) % LongestWindow])
            < StepShare * Math.Abs(infraredLevels[(levelCount - 1) % LongestWindow] - logInfrared);

    // Where both channels are equally bright, equal counts are equal shares too, and the two cannot be told apart.
    private bool IsEqualShare(in SignalSecond second)
    {
        var infrared = Math.Log(second.Light.InfraredCounts) - logInfrared;
        var red = Math.Log(second.Light.RedCounts) - logRed;
        return Math.Abs(infrared - red) < EqualSharesShare * Math.Max(Math.Abs(infrared), Math.Abs(red));
    }
}
