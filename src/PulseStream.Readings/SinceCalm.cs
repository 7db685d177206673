using PulseStream.Signal;

namespace PulseStream.Readings;

/// <summary>Weighs a pulse told from movement against where blood can have gone since the last calm second.</summary>
/// <remarks>The filter of one state that wanders by chance (Kalman, J Basic Eng 1960;82:35), begun anew at each second: windows overlap, so no told second says anything of the next one's error.</remarks>
internal sealed class SinceCalm(JudgeOptions options)
{
    private long calmSecond;
    private double calmRatio = double.NaN;
    private double calmVariance;

    /// <summary>Takes in a believed second without movement.</summary>
    /// <param name="second">The second.</param>
    public void Remember(in SignalSecond second)
    {
        var fit = second.Fit;
        calmSecond = second.SecondIndex;
        calmRatio = fit.Ratio;
        calmVariance = (fit.StandardError * fit.StandardError) + (fit.Disagreement * fit.Disagreement);
    }

    /// <summary>The same second with the likeliest R and its standard error.</summary>
    /// <param name="second">A believed second whose pulse was told from movement, after a calm one.</param>
    public SignalSecond Weigh(in SignalSecond second)
    {
        var fit = second.Fit;
        var wandered = calmVariance + (options.BloodWander * options.BloodWander * (second.SecondIndex - calmSecond));
        var measured = fit.StandardError * fit.StandardError;
        var weight = wandered / (wandered + measured);
        return second with { Fit = fit with { Ratio = calmRatio + (weight * (fit.Ratio - calmRatio)), StandardError = Math.Sqrt(weight * measured) } };
    }
}
