using System.Numerics;

namespace PulseStream.Signal;

/// <summary>
/// How far a wave is from one shape that comes again and again at a rate that drifts smoothly. What turns or swings in the clip keeps
/// its shape, and its weight keeps its rate from one turn to the next; a heart keeps neither.
/// </summary>
/// <remarks>
/// Least squares of the shape's harmonics, of which the first may grow or fade, and by Gauss-Newton of a phase that bends as a polynomial
/// does. A hundredth of jitter from beat to beat walks at random: of its phase, what a polynomial of the third degree leaves is some 0.8
/// hundredths of a turn over twenty beats, and as many times that in a harmonic as it is its number, so a twentieth of the wave and more.
/// </remarks>
internal sealed class SteadyWave
{
    private const int MostHarmonics = 10;
    private const int FewHarmonics = 2;

    // A blade passes as it came, however narrow: a wave that is nearly as steep in front as behind may have any harmonics and be no
    // blood's. Of one that leans, those beyond the fourth are blood that was thrown; what turns may lean as well, but smoothly.
    // A beat of more than a second has time for waves that lean either way, and no blade is so slow.
    private const int HarmonicsOfLeaning = 4;
    private const int HarmonicsOfHalf = 6;
    private const double LeaningSteepness = 0.3;
    private const double LeaningPeriodSeconds = 1.2;

    // A pendulum fades, and its overtones sooner than itself; what turns does not.
    private const int GrowingHarmonics = 3;
    private const int MostDegree = 3;
    private const int MostColumns = (2 * MostHarmonics) + (2 * GrowingHarmonics) + MostDegree;

    // A phase that bends once for each four beats leaves three of them to jitter.
    private const int BeatsOfDegree = 4;

    // Half as far again as the edge of the smoothing next to nothing is left.
    private const double BeyondEdge = 1.5;
    private const double FastestOfBinRate = 0.45;
    private const int RateSteps = 3;
    private const int PhaseSteps = 3;

    // A step that leaves so much of what was left is the last.
    private const double NoHelp = 0.95;

    // Within a radian a wave's derivative still points the way.
    private const double LargestStep = 1;

    // Mean square of a time from −1 to 1 under a Hann window: 1/3 − 2/π².
    private const double HannSpread = 0.130690966;

    // What is taken away as slow bends the phase of a slow wave, and of half a hertz and less it takes most of the first one away.
    private const double SlowPeriodSeconds = 0.9;
    private readonly double binRateHz;
    private readonly double fastestTurn;
    private readonly int longest;
    private readonly double[] wave;
    private readonly double[] phase;
    private readonly double[] pair;
    private readonly double[] columns;
    private readonly Complex[] harmonicsOfBin = new Complex[MostHarmonics];
    private readonly LeastSquares squares = new(MostColumns);
    private SlowBasis removed;

    public SteadyWave(SignalDesign design)
    {
        binRateHz = design.BinRateHz;
        fastestTurn = 2 * Math.PI * Math.Min(BeyondEdge * design.Options.FastestPulseHarmonicHz / binRateHz, FastestOfBinRate);
        longest = design.LongestWindowBins;
        wave = new double[longest];
        phase = new double[longest];
        pair = new double[2 * longest];
        columns = new double[MostColumns * longest];
        removed = design.SlowOf(design.Options.LongestWindowSeconds);
    }

    /// <summary>What such a wave leaves of infrared, white noise included, over the whole, root mean squares.</summary>
    /// <param name="pairs">Infrared and red in turn, slow part removed.</param>
    /// <param name="removedBasis">What was removed as slow.</param>
    /// <param name="periodSeconds">Period, s, to a few percent.</param>
    /// <param name="frontSteepness">Skewness of the slope.</param>
    public double UnsteadyShare(ReadOnlySpan<double> pairs, SlowBasis removedBasis, double periodSeconds, double frontSteepness)
    {
        removed = removedBasis;
        var mostHarmonics = Math.Abs(frontSteepness) < LeaningSteepness && periodSeconds < LeaningPeriodSeconds ? MostHarmonics : HarmonicsOfLeaning;
        var volumes = wave.AsSpan(0, pairs.Length / 2);
        for (var n = 0; n < volumes.Length; n++)
        {
            volumes[n] = pairs[2 * n];
        }

        var measured = 2 * Math.PI / (periodSeconds * binRateHz);
        var turn = TurnOf(volumes, measured);
        var least = RestFrom(volumes, turn, mostHarmonics);
        if (periodSeconds > SlowPeriodSeconds)
        {
            // What the slow part leaves of a slow wave may lead the phase astray, and what was measured as its period is nearer; a wave of
            // half a hertz and less goes with the baseline, and its overtones look like a pulse of twice its rate.
            least = Math.Min(least, RestFrom(volumes, measured, mostHarmonics));
            least = volumes.Length == longest ? Math.Min(least, RestFrom(volumes, 0.5 * turn, HarmonicsOfHalf)) : least;
        }

        return Math.Sqrt(least / Projection.Dot(volumes, volumes));
    }

    private double RestFrom(ReadOnlySpan<double> volumes, double turn, int most)
    {
        for (var n = 0; n < volumes.Length; n++)
        {
            phase[n] = turn * n;
        }

        var harmonics = Math.Clamp((int)(fastestTurn / turn), 1, most);
        var degree = Math.Clamp((int)(volumes.Length * turn / (2 * Math.PI * BeatsOfDegree)), 1, MostDegree);
        Follow(volumes, Math.Min(FewHarmonics, harmonics), degree);
        return Follow(volumes, harmonics, degree);
    }

    // Power of what is left once the phase bends with the wave, for as long as bending it helps.
    private double Follow(ReadOnlySpan<double> volumes, int harmonics, int degree)
    {
        var least = Solve(volumes, harmonics, degree: 0);
        for (var step = 0; step < PhaseSteps; step++)
        {
            var bent = Bend(volumes, harmonics, degree);
            if (bent > NoHelp * least)
            {
                return bent;
            }

            least = bent;
        }

        return Solve(volumes, harmonics, degree: 0);
    }

    // One step of Gauss-Newton: how the phase has to bend along with the shape, from the shape that was found last. What is left of
    // the wave then, as far as a small step tells.
    private double Bend(ReadOnlySpan<double> volumes, int harmonics, int degree)
    {
        var left = Solve(volumes, harmonics, degree);
        var steps = squares.Solution[^degree..];
        var largest = 0.0;
        for (var n = 0; n < volumes.Length; n++)
        {
            largest = Math.Max(largest, Math.Abs(StepAt(TimeOf(n, volumes.Length), steps)));
        }

        var scale = Math.Min(1, LargestStep / largest);
        for (var n = 0; n < volumes.Length; n++)
        {
            phase[n] += scale * StepAt(TimeOf(n, volumes.Length), steps);
        }

        return left;
    }

    private static double StepAt(double time, ReadOnlySpan<double> steps)
    {
        var sum = 0.0;
        for (var k = steps.Length - 1; k >= 0; k--)
        {
            sum = time * (sum + steps[k]);
        }

        return sum;
    }

    private static double TimeOf(int n, int length) => (2 * (n + 0.5) / length) - 1;

    // Power of what is left. The solution holds for each harmonic a cosine and a sine, growing ones too for the first, then the phase.
    private double Solve(ReadOnlySpan<double> volumes, int harmonics, int degree)
    {
        var shape = (2 * harmonics) + (2 * Math.Min(harmonics, GrowingHarmonics));
        for (var n = 0; n < volumes.Length; n++)
        {
            var time = TimeOf(n, volumes.Length);
            FillBin(n, time, harmonics);
            if (degree > 0)
            {
                FillPhase(n, time, harmonics, shape, degree);
            }
        }

        var count = shape + degree;
        for (var k = 0; k < count; k += 2)
        {
            RemoveSlow(k, Math.Min(k + 1, count - 1), volumes.Length);
        }

        return Projection.Dot(volumes, volumes) - squares.Solve(columns, longest, count, volumes);
    }

    private void FillBin(int n, double time, int harmonics)
    {
        var first = Turned(phase[n]);
        var now = first;
        var k = 0;
        for (var harmonic = 0; harmonic < harmonics; harmonic++)
        {
            harmonicsOfBin[harmonic] = now;
            columns[(k++ * longest) + n] = now.Real;
            columns[(k++ * longest) + n] = now.Imaginary;
            if (harmonic < GrowingHarmonics)
            {
                columns[(k++ * longest) + n] = time * now.Real;
                columns[(k++ * longest) + n] = time * now.Imaginary;
            }

            now *= first;
        }
    }

    // What the wave changes by where its phase is ahead, times powers of time.
    private void FillPhase(int n, double time, int harmonics, int shape, int degree)
    {
        var found = squares.Solution;
        var change = 0.0;
        var k = 0;
        for (var harmonic = 0; harmonic < harmonics; harmonic++)
        {
            var (cosine, sine) = (found[k], found[k + 1]);
            k += 2;
            if (harmonic < GrowingHarmonics)
            {
                cosine += time * found[k];
                sine += time * found[k + 1];
                k += 2;
            }

            var now = harmonicsOfBin[harmonic];
            change += (harmonic + 1) * ((sine * now.Real) - (cosine * now.Imaginary));
        }

        for (var power = 0; power < degree; power++)
        {
            change *= time;
            columns[((shape + power) * longest) + n] = change;
        }
    }

    private void RemoveSlow(int first, int second, int length)
    {
        var both = pair.AsSpan(0, 2 * length);
        var one = columns.AsSpan(first * longest, length);
        var other = columns.AsSpan(second * longest, length);
        for (var n = 0; n < length; n++)
        {
            both[2 * n] = one[n];
            both[(2 * n) + 1] = other[n];
        }

        removed.Remove(both);
        for (var n = 0; n < length; n++)
        {
            one[n] = both[2 * n];
            other[n] = both[(2 * n) + 1];
        }
    }

    // Angle of a bin, in which the phase of the stronger of the first two harmonics stays where it is: the slow part takes
    // most of a slow wave's first one away. By steps of Newton under a Hann window, which keeps the other harmonics out (Harris,
    // Proc IEEE 1978;66:51).
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

    private static Complex Turned(double angle) => new(Math.Cos(angle), Math.Sin(angle));
}
