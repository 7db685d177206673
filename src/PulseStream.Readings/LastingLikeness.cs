using PulseStream.Signal;

namespace PulseStream.Readings;

/// <summary>How alike the beats of a wave are, and have been for some seconds: one heart's stay alike whatever its rhythm, chance shaking's are so in a window or two.</summary>
internal sealed class LastingLikeness(JudgeOptions options, bool hasRed)
{
    private readonly double[] newest = new double[options.LastingLikenessSeconds];
    private int count;
    private long newestSecond;
    private bool isShown;

    /// <summary>The beats' agreement, and what a front or a crest counts for beside it.</summary>
    /// <param name="pulse">The beats of a window.</param>
    /// <param name="isKnown">
    /// Whether the pulse is the one believed before. Second waves that were counted are unlike the beats, and the rises of a round wave are not
    /// placed well: how well a known pulse repeats tells more where it is slow or does so hardly changed.
    /// </param>
    public double Of(in WindowPulse pulse, bool isKnown)
    {
        var doesRepeat = isKnown && (PulseForm.IsSlow(pulse, options) || (PulseForm.IsRound(pulse, options) && pulse.Periodicity >= options.Form.LeastThirdWavePeriodicity));
        var agreement = doesRepeat ? Math.Max(pulse.Agreement, pulse.Periodicity) : pulse.Agreement;
        return agreement + (options.ShapeWeight * Math.Min(PulseForm.ShapeOf(pulse), options.MostShape));
    }

    /// <summary>Takes in a second that was asked; one left out between two begins anew.</summary>
    /// <param name="second">The second.</param>
    /// <param name="isWave">Whether its wave is one that blood could make.</param>
    /// <param name="likeness">How alike its beats are.</param>
    public void See(in SignalSecond second, bool isWave, double likeness)
    {
        if (!hasRed || second.Fit.WindowSeconds < options.SettlingSeconds)
        {
            return;
        }

        var isAlone = isWave && second.Fit.Lines == 0;
        count = second.SecondIndex == newestSecond + 1 ? count + 1 : 1;
        newestSecond = second.SecondIndex;
        newest[newestSecond % newest.Length] = isAlone ? likeness : options.LikenessOfNone;
        isShown = isAlone && count >= newest.Length && Mean() >= options.LeastLastingLikeness;
    }

    /// <summary>Whether they have been alike for long enough, up to a second.</summary>
    /// <param name="second">The second.</param>
    public bool IsShownIn(in SignalSecond second) => isShown && second.SecondIndex == newestSecond;

    private double Mean()
    {
        var sum = 0.0;
        foreach (var likeness in newest)
        {
            sum += likeness;
        }

        return sum / newest.Length;
    }
}
