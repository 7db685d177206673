namespace PulseStream.Tests.Readings;

/// <summary>A heart that need not beat evenly: times and heights of its beats, and the blood volume that they make.</summary>
/// <param name="Fronts">Times of the steepest rises, s.</param>
/// <param name="Heights">Height of each beat, 1 for a full one.</param>
/// <param name="SecondWave">Height of the second wave, as a share of the beat's.</param>
/// <param name="SecondWaveAfter">From the foot of the front to that of the second wave, s.</param>
internal sealed record Heart(double[] Fronts, double[] Heights, double SecondWave = 0, double SecondWaveAfter = 0.34)
{
    private const double FrontSeconds = 0.16;

    // A heart whose rate goes by a rule of its own: the interval that follows the beat of a number at a time.
    public static Heart Of(double seconds, Func<int, double, double> interval, Func<int, double>? height = null, double secondWave = 0)
    {
        var fronts = new List<double> { 0.3 };
        while (fronts[^1] < seconds)
        {
            fronts.Add(fronts[^1] + interval(fronts.Count - 1, fronts[^1]));
        }

        return new([.. fronts], [.. fronts.Select((_, k) => height?.Invoke(k) ?? 1)], secondWave);
    }

    public double BloodAt(double t)
    {
        const double remembered = 3;
        var blood = 0.0;
        for (var k = 0; k < Fronts.Length && Fronts[k] < t + FrontSeconds; k++)
        {
            blood += Fronts[k] > t - remembered ? Heights[k] * BeatAt(t - Fronts[k] + (FrontSeconds / 2)) : 0;
        }

        return blood;
    }

    /// <summary>Mean rate from the first to the last beat within the eight seconds before a time, 1/min.</summary>
    public double RateBefore(double end)
    {
        var beats = Fronts.Where(f => f >= end - 8 && f < end).ToArray();
        return 60 * (beats.Length - 1) / (beats[^1] - beats[0]);
    }

    /// <summary>The same with the parts of intervals that the ends cut off.</summary>
    public double RateByTimeBefore(double end) => 60 * (PhaseAt(end) - PhaseAt(end - 8)) / 8;

    private double PhaseAt(double t)
    {
        var k = Array.FindLastIndex(Fronts, f => f <= t);
        return k + ((t - Fronts[k]) / (Fronts[k + 1] - Fronts[k]));
    }

    private double BeatAt(double t)
    {
        const double fall = 0.22;
        var wave = SecondWaveAfter;
        const double waveSeconds = 0.3;
        var own = t < 0 ? 0 : t < FrontSeconds ? 0.5 * (1 - Math.Cos(Math.PI * t / FrontSeconds)) : Math.Exp(-(t - FrontSeconds) / fall);
        var second = t > wave && t < wave + waveSeconds ? SecondWave * 0.5 * (1 - Math.Cos(2 * Math.PI * (t - wave) / waveSeconds)) : 0;
        return own + second;
    }
}
