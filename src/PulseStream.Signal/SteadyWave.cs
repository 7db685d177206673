using System.Numerics;

namespace PulseStream.Signal;

/// <summary>
/// How far a wave is from three harmonics of one rate, four of a slow one. What swings in the clip keeps its rate and has few harmonics; a heart
/// keeps neither rate nor shape, and throws its blood.
/// </summary>
/// <remarks>
/// Least squares by Gram-Schmidt with harmonics that may grow or fade; the rate by steps of Newton from the slope of a
/// harmonic's phase under a Hann window, which keeps the others out (Harris, Proc IEEE 1978;66:51).
/// </remarks>
internal sealed class SteadyWave
{
    private const int Harmonics = 3;

    // Something pushed in the clip has a fourth one as well; that of a slow pulse lies far below the edge of the smoothing, and
    // leaves enough beyond it.
    private const int HarmonicsOfSlow = 4;
    private const double FourHarmonicsSeconds = 1.2;
    private const int RateSteps = 3;

    // Mean square of a time from −1 to 1 under a Hann window: 1/3 − 2/π².
    private const double HannSpread = 0.130690966;

    // What is taken away as slow bends the phase of a slow wave: its rate is looked for to within a hundredth of a turn.
    private const double SlowPeriodSeconds = 0.9;
    private const double LargestMiss = 0.02;
    private const double SmallestMiss = 0.001;

    // Of half a unit for each bin.
    private const double LeastPower = 1e-3;
    private readonly double binRateHz;
    private readonly int longest;
    private readonly double[] wave;
    private readonly double[] rest;
    private readonly double[] pair;
    private readonly double[] columns;

    public SteadyWave(SignalDesign design)
    {
        binRateHz = design.BinRateHz;
        longest = design.LongestWindowBins;
        wave = new double[longest];
        rest = new double[longest];
        pair = new double[2 * longest];
        columns = new double[4 * 2 * Harmonics * longest];
    }

    /// <summary>What three steady harmonics, four of a slow wave, leave of infrared, white noise included, over the whole, root mean squares.</summary>
    /// <param name="pairs">Infrared and red in turn, slow part removed.</param>
    /// <param name="removed">What was removed as slow.</param>
    /// <param name="periodSeconds">Period, s, to a few percent.</param>
    public double UnsteadyShare(ReadOnlySpan<double> pairs, SlowBasis removed, double periodSeconds)
    {
        var volumes = wave.AsSpan(0, pairs.Length / 2);
        for (var n = 0; n < volumes.Length; n++)
        {
            volumes[n] = pairs[2 * n];
        }

        // What the slow part leaves of a slow wave may lead the phase astray, and what was measured as its period is nearer.
        var measured = 2 * Math.PI / (periodSeconds * binRateHz);
        var turn = TurnOf(volumes, measured);
        var least = RestAt(volumes, removed, turn, HarmonicsOf(turn, volumes.Length));
        if (periodSeconds > SlowPeriodSeconds)
        {
            (turn, least) = Better(volumes, removed, measured, (turn, least));
        }

        for (var step = LargestMiss; periodSeconds > SlowPeriodSeconds && step > SmallestMiss; step /= 2)
        {
            (turn, least) = Better(volumes, removed, turn * (1 + step), Better(volumes, removed, turn * (1 - step), (turn, least)));
        }

        // A wave of half a hertz and less goes with the baseline, and its overtones look like a pulse of twice its rate.
        if (periodSeconds > SlowPeriodSeconds && volumes.Length == longest)
        {
            least = Math.Min(least, RestAt(volumes, removed, 0.5 * turn, 2 * Harmonics));
        }

        return Math.Sqrt(least / Projection.Dot(volumes, volumes));
    }

    private (double Turn, double Left) Better(ReadOnlySpan<double> volumes, SlowBasis removed, double turn, (double Turn, double Left) best)
    {
        var left = RestAt(volumes, removed, turn, HarmonicsOf(turn, volumes.Length));
        return left < best.Left ? (turn, left) : best;
    }

    private int HarmonicsOf(double turn, int length) => length == longest && turn * FourHarmonicsSeconds * binRateHz < 2 * Math.PI ? HarmonicsOfSlow : Harmonics;

    private double RestAt(ReadOnlySpan<double> volumes, SlowBasis removed, double turn, int harmonics)
    {
        var count = 0;
        for (var harmonic = 1; harmonic <= harmonics && harmonic * turn < Math.PI; harmonic++)
        {
            count = AddColumns(removed, harmonic * turn, isGrowing: false, count, volumes.Length);
            count = AddColumns(removed, harmonic * turn, isGrowing: true, count, volumes.Length);
        }

        var left = rest.AsSpan(0, volumes.Length);
        volumes.CopyTo(left);
        for (var k = 0; k < count; k++)
        {
            Projection.Subtract(left, Column(k, left.Length));
        }

        return Projection.Dot(left, left);
    }

    // Angle of a bin, in which the phase of the stronger of the first two harmonics stays where it is: the slow part takes
    // most of a slow wave's first one away.
    private static double TurnOf(ReadOnlySpan<double> volumes, double turn)
    {
        var harmonic = PhaseAt(volumes, 2 * turn).Power > PhaseAt(volumes, turn).Power ? 2 : 1;
        for (var step = 0; step < RateSteps; step++)
        {
            turn += PhaseAt(volumes, harmonic * turn).Slope / harmonic;
        }

        return turn;
    }

    // Power of a frequency under a Hann window, and by how much an angle of a bin has to be more for its phase to stay.
    private static (double Power, double Slope) PhaseAt(ReadOnlySpan<double> volumes, double turn)
    {
        // Turns by so much for each bin: no sine has to be looked up for one.
        var half = 0.5 * volumes.Length;
        var now = Turned(turn * (0.5 - half));
        var step = Turned(turn);
        var windowNow = Turned(Math.PI * ((0.5 / half) - 1));
        var windowStep = Turned(Math.PI / half);
        double cosines = 0, sines = 0, lateCosines = 0, lateSines = 0;
        for (var n = 0; n < volumes.Length; n++)
        {
            var time = ((n + 0.5) / half) - 1;
            var value = volumes[n] * (0.5 + (0.5 * windowNow.Real));
            cosines += value * now.Real;
            sines -= value * now.Imaginary;
            lateCosines += value * time * now.Real;
            lateSines -= value * time * now.Imaginary;
            now *= step;
            windowNow *= windowStep;
        }

        var power = (cosines * cosines) + (sines * sines);
        return (power, ((lateSines * cosines) - (lateCosines * sines)) / power / (HannSpread * half));
    }

    private Span<double> Column(int k, int length) => columns.AsSpan(k * longest, length);

    private int AddColumns(SlowBasis removed, double turn, bool isGrowing, int count, int length)
    {
        var both = pair.AsSpan(0, 2 * length);
        var now = Complex.One;
        var step = Turned(turn);
        for (var n = 0; n < length; n++)
        {
            var size = isGrowing ? (2 * (n + 0.5) / length) - 1 : 1;
            both[2 * n] = size * now.Real;
            both[(2 * n) + 1] = size * now.Imaginary;
            now *= step;
        }

        removed.Remove(both);
        for (var lane = 0; lane < 2; lane++)
        {
            var column = Column(count, length);
            for (var n = 0; n < length; n++)
            {
                column[n] = both[(2 * n) + lane];
            }

            for (var k = 0; k < count; k++)
            {
                Projection.Subtract(column, Column(k, length));
            }

            // Of a slow wave's first harmonic the slow part may have left nothing.
            var power = Projection.Dot(column, column);
            if (power > LeastPower)
            {
                var scale = 1 / Math.Sqrt(power);
                for (var n = 0; n < length; n++)
                {
                    column[n] *= scale;
                }

                count++;
            }
        }

        return count;
    }

    private static Complex Turned(double angle) => new(Math.Cos(angle), Math.Sin(angle));
}
