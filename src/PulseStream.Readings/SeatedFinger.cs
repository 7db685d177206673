using PulseStream.Signal;

namespace PulseStream.Readings;

/// <summary>
/// Tells light that comes past the finger from blood. Whatever comes past, and however much of its own light the finger lets
/// go for it, divides each pulse by the whole light of its channel: R moves by as much as red's light has moved against
/// infrared's, the other way, and their product stays. Blood that loses oxygen moves R by far more than it takes of the light.
/// </summary>
internal sealed class SeatedFinger(JudgeOptions options, CalmLight light)
{
    private double logRatio = double.NaN;
    private double logLights;

    /// <summary>Whether the finger has been believed since it came on.</summary>
    public bool IsKnown => !double.IsNaN(logRatio);

    /// <summary>The finger has left.</summary>
    public void Forget() => logRatio = double.NaN;

    /// <summary>
    /// How far blood's own R may lie from the one read, with its sign, in units of R: as far as red's light has moved against
    /// infrared's since the finger sat, and no further than where R was then.
    /// </summary>
    /// <param name="second">A believed second.</param>
    public double LeakedRatio(in SignalSecond second)
    {
        var (ratio, lights) = MovesOf(second);
        return IsAlike(second, ratio) || !IsLeak(second, ratio, lights) ? 0
            : second.Fit.Ratio * (Math.Exp(-Math.Sign(ratio) * Math.Min(Math.Abs(ratio), options.LeakExplains * Math.Abs(lights))) - 1);
    }

    /// <summary>Whether R has moved with the light, by too much for an interval to hold.</summary>
    /// <param name="second">A second whose pulse is sound in itself.</param>
    public bool HasLeaked(in SignalSecond second)
    {
        var (ratio, lights) = MovesOf(second);
        return IsLeak(second, ratio, lights)
            && Math.Abs(ratio) > options.LeakMatchShare * Math.Abs(lights)
            && Math.Abs(LeakedRatio(second)) > options.LargestLeakedRatio;
    }

    /// <summary>Whether whatever has come past the finger has left R: it is where it was and known well enough for that, or the lights have hardly moved against one another.</summary>
    /// <param name="second">A second whose pulse is sound in itself.</param>
    public bool IsUnharmed(in SignalSecond second)
    {
        var (ratio, lights) = MovesOf(second);
        return Math.Max(second.Fit.Ratio * Math.Abs(ratio), RatioChance.Of(second, options)) < options.LargestKeptRatioMove
            || second.Fit.Ratio * options.LeakExplains * Math.Abs(lights) < options.LargestHarmlessLeak;
    }

    /// <summary>Takes over a believed second: where R is as it was, the light has drifted; where it has moved by more than the light, it is blood's.</summary>
    /// <param name="second">The second.</param>
    public void Remember(in SignalSecond second)
    {
        var (ratio, lights) = MovesOf(second);
        var isAlike = IsAlike(second, ratio);
        if (IsKnown && (isAlike ? second.Fit.IsMoving : IsLeak(second, ratio, lights)))
        {
            return;
        }

        var gain = IsKnown && isAlike ? options.SeatGain : 1;
        if (!IsKnown)
        {
            logRatio = logLights = 0;
            (ratio, lights) = MovesOf(second);
        }

        logRatio += gain * ratio;
        logLights += gain * lights;
    }

    private bool IsAlike(in SignalSecond second, double ratioMove) => Math.Abs(ratioMove) <= RatioChance.Of(second, options) / second.Fit.Ratio;

    private bool IsLeak(in SignalSecond second, double ratioMove, double lightsMove)
    {
        const double sureness = 3;
        return ratioMove * lightsMove < 0
            && Math.Abs(ratioMove) < (options.LeakExplains * Math.Abs(lightsMove)) + (sureness * RatioChance.Of(second, options) / second.Fit.Ratio);
    }

    // Where R moves within the window it speaks of its last quarter's start, the middle of its newer half.
    private (double Ratio, double Lights) MovesOf(in SignalSecond second)
    {
        var levels = light.LevelsOver(second.Fit.IsMoving ? second.Fit.WindowSeconds / 2 : second.Fit.WindowSeconds);
        return (Math.Log(second.Fit.Ratio) - logRatio, levels.Red - levels.Infrared - logLights);
    }
}
