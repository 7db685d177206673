using PulseStream.Signal;

namespace PulseStream.Readings;

/// <summary>
/// Tells a finger that slips while the light stays as bright: what leaks past takes the place of what the finger lets
/// through, more of one light than of the other, so infrared's pulse shrinks and R moves with it. Blood that loses oxygen
/// moves R alone, vessels that close shrink both pulses alike.
/// </summary>
internal sealed class SlipWatch(JudgeOptions options, CalmLight light)
{
    private readonly double[] logHeights = new double[options.Slip.Seconds];
    private readonly double[] logRatios = new double[options.Slip.Seconds];
    private readonly (double Infrared, double Red)[] logLights = new (double, double)[options.Slip.Seconds];
    private int count;
    private double heightBefore;
    private double ratioBefore;
    private bool isSlipping;

    /// <summary>The finger has left.</summary>
    public void Forget()
    {
        count = 0;
        isSlipping = false;
    }

    /// <summary>Looks at a second whose pulse is sound in itself.</summary>
    public bool Sees(in SignalSecond second)
    {
        if (IsShort(second))
        {
            return isSlipping;
        }

        var highest = Highest();
        if (highest < 0)
        {
            return false;
        }

        var seemsSlipping = isSlipping ? IsStillShrunk(second) : HasShrunk(second, highest);
        isSlipping = seemsSlipping && !WasSoBefore(second, highest);
        if (seemsSlipping && !isSlipping)
        {
            ForgetHigher(Math.Log(second.Fit.PulseSize));
        }

        return isSlipping;
    }

    private bool IsStillShrunk(in SignalSecond second) =>
        heightBefore - Math.Log(second.Fit.PulseSize) > options.Slip.Shrink / 2
        && Math.Abs(Math.Log(second.Fit.Ratio) - ratioBefore) > RatioChangeOf(second) / 2
        && HasRedShrunk(second);

    private bool HasShrunk(in SignalSecond second, int highest)
    {
        heightBefore = logHeights[highest];
        ratioBefore = logRatios[highest];
        var shrink = heightBefore - Math.Log(second.Fit.PulseSize);
        var change = Math.Abs(Math.Log(second.Fit.Ratio) - ratioBefore);
        return shrink > options.Slip.Shrink
            && change > RatioChangeOf(second)
            && (change > options.Slip.RatioShare * shrink || shrink > options.Slip.LargestShrink || HasBothMoved(second, highest, shrink))
            && HasRedShrunk(second)
            && MayLeak(second, highest, shrink)
            && HasShrunkWithRatio(second, highest);
    }

    private double RatioChangeOf(in SignalSecond second) => Math.Min(options.Slip.RatioChange, options.Slip.RatioMove / second.Fit.Ratio);

    // Vessels that close move the light by no more than the pulse itself.
    private bool HasBothMoved(in SignalSecond second, int highest, double shrink)
    {
        var (infrared, red) = light.LevelsOver(second.Fit.WindowSeconds);
        return Math.Min(Math.Abs(infrared - logLights[highest].Infrared), Math.Abs(red - logLights[highest].Red)) > options.Slip.BothLightsShare * shrink;
    }

    // What had something else in it had the pulse that is left: once the seconds before it are no longer remembered it would pass for a slip again.
    private void ForgetHigher(double logHeight)
    {
        for (var k = 0; k < Math.Min(count, logHeights.Length); k++)
        {
            logHeights[k] = logHeights[k] > logHeight + options.Slip.Shrink ? logHeight : logHeights[k];
        }
    }

    // What leaks past takes the place of what the finger lets through by chance only. Where it has, to a tenth and in both lights, either
    // pulse has to have shrunk by more than vessels and breathing do.
    private bool MayLeak(in SignalSecond second, int highest, double shrink)
    {
        var (infrared, red) = light.LevelsOver(second.Fit.WindowSeconds);
        var move = Math.Max(Math.Abs(infrared - logLights[highest].Infrared), Math.Abs(red - logLights[highest].Red));
        return move > options.Slip.LightShare * shrink
            || Math.Max(shrink, RedShrink(second)) > options.Slip.LargestShrink;
    }

    // A pulse that was as it is now before it was highest has only come back: what was highest had something else in it. Where infrared's
    // was so in the same lights, nothing has come past infrared, and what would have had to come past red for its R has not: that is blood's.
    private bool WasSoBefore(in SignalSecond second, int highest)
    {
        var (height, ratio) = (Math.Log(second.Fit.PulseSize), Math.Log(second.Fit.Ratio));
        var lights = light.LevelsOver(second.Fit.WindowSeconds);
        var alike = 0;
        for (var k = Math.Max(0, count - logHeights.Length); k % logHeights.Length != highest; k++)
        {
            var place = k % logHeights.Length;
            var change = Math.Abs(logRatios[place] - ratio);
            var move = Math.Max(Math.Abs(lights.Infrared - logLights[place].Infrared), Math.Abs(lights.Red - logLights[place].Red));
            alike += Math.Abs(logHeights[place] - height) < options.Slip.Shrink / 2
                && (change < options.Slip.RatioChange / 2 || move < options.Slip.LightShare * change) ? 1 : 0;
        }

        return alike >= options.Slip.SecondsBefore;
    }

    // What slips does both at once. Between the seconds whose R was still nearer to the old one and those nearer to the new one the
    // pulse has to have shrunk as well: vessels that closed before or after blood changed are no slip.
    private bool HasShrunkWithRatio(in SignalSecond second, int highest)
    {
        var (height, ratio) = (Math.Log(second.Fit.PulseSize), Math.Log(second.Fit.Ratio));
        var (oldCount, oldHeight, oldRatio) = (0, 0.0, 0.0);
        var (newCount, newHeight, newRatio) = (1, height, ratio);
        var k = Math.Max(0, count - logHeights.Length);
        while (k % logHeights.Length != highest)
        {
            k++;
        }

        for (; k < count; k++)
        {
            var place = k % logHeights.Length;
            if (Math.Abs(logRatios[place] - ratioBefore) < Math.Abs(logRatios[place] - ratio))
            {
                (oldCount, oldHeight, oldRatio) = (oldCount + 1, oldHeight + logHeights[place], oldRatio + logRatios[place]);
            }
            else
            {
                (newCount, newHeight, newRatio) = (newCount + 1, newHeight + logHeights[place], newRatio + logRatios[place]);
            }
        }

        var shrunk = (oldHeight / oldCount) - (newHeight / newCount);
        var ratioShare = ((newRatio / newCount) - (oldRatio / oldCount)) / (ratio - ratioBefore);
        return shrunk > options.Slip.Together * ratioShare * (heightBefore - height);
    }

    // What leaks past takes from both pulses; blood that loses oxygen makes red's grow.
    private bool HasRedShrunk(in SignalSecond second) => RedShrink(second) > 0;

    private double RedShrink(in SignalSecond second) =>
        heightBefore - Math.Log(second.Fit.PulseSize) + ratioBefore - Math.Log(second.Fit.Ratio);

    /// <summary>Takes over a believed second.</summary>
    public void Remember(in SignalSecond second)
    {
        if (IsShort(second))
        {
            return;
        }

        logHeights[count % logHeights.Length] = Math.Log(second.Fit.PulseSize);
        logRatios[count % logHeights.Length] = Math.Log(second.Fit.Ratio);
        logLights[count % logHeights.Length] = light.LevelsOver(second.Fit.WindowSeconds);
        count++;
    }

    // A short window takes more of a slow pulse away with the baseline.
    private bool IsShort(in SignalSecond second) => !(second.Fit.WindowSeconds >= options.Slip.Beats * second.Pulse.PeriodSeconds);

    private int Highest()
    {
        var highest = -1;
        for (var k = 0; k < Math.Min(count, logHeights.Length); k++)
        {
            highest = highest < 0 || logHeights[k] > logHeights[highest] ? k : highest;
        }

        return highest;
    }
}
