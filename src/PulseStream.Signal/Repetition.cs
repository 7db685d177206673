using System.Runtime.Intrinsics;

namespace PulseStream.Signal;

/// <summary>The period with which a window repeats.</summary>
/// <remarks>
/// Normalised autocorrelation, its first peak as good as the best (Rabiner, IEEE Trans Acoust Speech Signal Process
/// 1977;25:24): without a rule for the shortest lag it picks multiples.
/// </remarks>
internal sealed class Repetition
{
    // 33 to 220 beats a minute are what a finger can show and an oximeter is asked for; a wave of up to 270, and a bin to spare, is no
    // beat, but would be found at twice its period and pass for one.
    private const double ShortestPeriodSeconds = 0.2;
    public const double LongestPeriodSeconds = 1.8;

    // Two beats at 48 a minute, the slowest of which a window of eight seconds holds three fronts of pairs.
    private const double LongestPairSeconds = 2.5;

    // The first repetition as good as the best is the period; the later ones are its multiples.
    private const double FirstGoodShare = 0.85;

    // A period need not be known to better than a tenth: bins of a thirteenth of a second are enough, the parabola does the rest.
    private const double CoarseRateHz = 13;

    // Lags that share one pass over the window.
    private const int Together = 16;
    private readonly int stride;
    private readonly double rateHz;
    private readonly double[] coarse;
    private readonly double[] energies;
    private readonly double[] values;
    private int length;

    public Repetition(SignalDesign design)
    {
        stride = Math.Max(1, (int)(design.BinRateHz / CoarseRateHz));
        rateHz = design.BinRateHz / stride;
        var longest = design.LongestWindowBins / stride;
        coarse = new double[longest + (int)(LongestPairSeconds * rateHz) + 1 + Together];
        energies = new double[longest + 1];
        values = new double[(int)(LongestPairSeconds * rateHz) + 2 + Together];
    }

    /// <summary>The period, s; NaN where nothing repeats.</summary>
    public double PeriodSeconds { get; private set; }

    /// <summary>Autocorrelation at that period, −1 to 1.</summary>
    public double Periodicity { get; private set; }

    /// <summary>Autocorrelation at twice the period; 0 where that is longer than is looked for, or nothing repeats.</summary>
    public double PeriodicityOfTwo { get; private set; }

    /// <summary>Finds the period of a window.</summary>
    /// <param name="volumes">Blood volume, slow part removed.</param>
    public void Find(ReadOnlySpan<double> volumes)
    {
        length = Coarsen(volumes);
        var shortest = (int)Math.Ceiling(ShortestPeriodSeconds * rateHz);
        var longest = Math.Min((int)(LongestPeriodSeconds * rateHz), length / 2);
        for (var lag = shortest - 1; lag <= longest + 1; lag += Together)
        {
            Correlate(lag);
        }

        var highest = HighestPeak(shortest, longest);
        var period = FirstPeak(shortest, longest, FirstGoodShare * highest);
        Periodicity = highest > 0 ? TopOf(period) : highest;
        PeriodicityOfTwo = highest > 0 ? TopNearTwice(period, longest) : 0;
        PeriodSeconds = highest > 0 ? Parabola.TopNear(values, period) / rateHz : double.NaN;
    }

    /// <summary>Finds a repetition of the same window that is slower than any pulse: of beats that come two by two.</summary>
    /// <returns>The best period, s, and the autocorrelation at it; NaN and 0 where there is none.</returns>
    public (double PeriodSeconds, double Periodicity) FindLonger()
    {
        var shortest = (int)(LongestPeriodSeconds * rateHz);
        var longest = Math.Min((int)(LongestPairSeconds * rateHz), length / 2);
        var best = 0;
        for (var lag = shortest - 1; lag <= longest + 1; lag += Together)
        {
            Correlate(lag);
        }

        for (var lag = shortest; lag <= longest; lag++)
        {
            best = IsPeak(lag) && values[lag] > (best > 0 ? values[best] : 0) ? lag : best;
        }

        return best > 0 ? (Parabola.TopNear(values, best) / rateHz, TopOf(best)) : (double.NaN, 0);
    }

    private int Coarsen(ReadOnlySpan<double> volumes)
    {
        var count = volumes.Length / stride;
        var energy = 0.0;
        for (var n = 0; n < count; n++)
        {
            var sum = 0.0;
            foreach (var volume in volumes[..stride])
            {
                sum += volume;
            }

            volumes = volumes[stride..];
            coarse[n] = sum;
            energy += sum * sum;
            energies[n + 1] = energy;
        }

        // Behind a window that was longer.
        coarse.AsSpan(count, Together).Clear();
        return count;
    }

    // Products of so many lags at once, two in a vector: one value is read once for all of them, and no sum waits for another. What
    // reaches past the window's end meets zeros there.
    private void Correlate(int lag)
    {
        Vector128<double> a = default, b = default, c = default, d = default, e = default, f = default, g = default, h = default;
        var early = coarse.AsSpan(0, Math.Max(0, length - lag));
        var late = coarse.AsSpan(lag, early.Length + Together - 1);
        for (; !early.IsEmpty; early = early[1..], late = late[1..])
        {
            var own = Vector128.Create(early[0]);
            a = Vector128.FusedMultiplyAdd(own, BloodCourse.TwoAt(late, 0), a);
            b = Vector128.FusedMultiplyAdd(own, BloodCourse.TwoAt(late, 2), b);
            c = Vector128.FusedMultiplyAdd(own, BloodCourse.TwoAt(late, 4), c);
            d = Vector128.FusedMultiplyAdd(own, BloodCourse.TwoAt(late, 6), d);
            e = Vector128.FusedMultiplyAdd(own, BloodCourse.TwoAt(late, 8), e);
            f = Vector128.FusedMultiplyAdd(own, BloodCourse.TwoAt(late, 10), f);
            g = Vector128.FusedMultiplyAdd(own, BloodCourse.TwoAt(late, 12), g);
            h = Vector128.FusedMultiplyAdd(own, BloodCourse.TwoAt(late, 14), h);
        }

        a.CopyTo(values, lag);
        b.CopyTo(values, lag + 2);
        c.CopyTo(values, lag + 4);
        d.CopyTo(values, lag + 6);
        e.CopyTo(values, lag + 8);
        f.CopyTo(values, lag + 10);
        g.CopyTo(values, lag + 12);
        h.CopyTo(values, lag + 14);
        for (var two = lag; two < lag + Together; two += 2)
        {
            Normalise(two);
        }
    }

    // Two lags with one square root and one division.
    private void Normalise(int lag)
    {
        var early = Vector128.Create(energies[Math.Max(0, length - lag)], energies[Math.Max(0, length - lag - 1)]);
        var before = Vector128.Create(energies[Math.Min(lag, length)], energies[Math.Min(lag + 1, length)]);
        var power = early * (Vector128.Create(energies[length]) - before);
        var normalised = BloodCourse.TwoAt(values, lag) / Vector128.Sqrt(power);
        (normalised & Vector128.GreaterThan(power, Vector128<double>.Zero)).CopyTo(values, lag);
    }

    private double HighestPeak(int shortest, int longest)
    {
        var highest = double.NegativeInfinity;
        for (var lag = shortest; lag <= longest; lag++)
        {
            highest = IsPeak(lag) ? Math.Max(highest, TopOf(lag)) : highest;
        }

        return highest;
    }

    private int FirstPeak(int shortest, int longest, double enough)
    {
        var lag = shortest;
        while (lag < longest && !(IsPeak(lag) && TopOf(lag) >= enough))
        {
            lag++;
        }

        return lag;
    }

    // Twice a lag that is known to half a bin is known to one.
    private double TopNearTwice(int period, int longest)
    {
        var twice = (int)Math.Round(2 * Parabola.TopNear(values, period));
        var top = 0.0;
        for (var lag = twice - 1; lag <= twice + 1 && twice < longest; lag++)
        {
            top = IsPeak(lag) ? Math.Max(top, TopOf(lag)) : top;
        }

        return top;
    }

    private bool IsPeak(int lag) => values[lag] >= values[lag - 1] && values[lag] > values[lag + 1];

    private double TopOf(int lag) => Parabola.HeightNear(values, lag);
}
