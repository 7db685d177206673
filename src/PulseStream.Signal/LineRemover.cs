using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace PulseStream.Signal;

/// <summary>
/// Takes steady lines out of a window: mains light folded into the pulse band is one frequency added to both lights. It is
/// looked for where taking it away makes red and infrared agree best, and taken away jointly with the regression.
/// </summary>
/// <remarks>
/// Variable projection (Golub, Pereyra, SIAM J Numer Anal 1973;10:413): for each frequency the line's own size and R follow
/// by least squares, so only the frequency is searched. Mains frequency wanders by some hundredths of a hertz within seconds,
/// which makes a line's size and phase change slowly: that is what its further shapes are for.
/// </remarks>
internal sealed class LineRemover
{
    /// <summary>Lines that can be taken out of one window.</summary>
    public const int MostLines = 3;

    /// <summary>Degrees of freedom of a line alone: cosine and sine, as they are, drifting and bending.</summary>
    public const int FreedomOfOwn = 2 * OwnShapes;

    /// <summary>Degrees of freedom of one more wave: what rides on the pulse, or a line's second.</summary>
    public const int FreedomOfWave = 2;

    /// <summary>Degrees of freedom that one line takes, with what rides on the pulse.</summary>
    public const int FreedomOfLine = FreedomOfOwn + FreedomOfWave;

    /// <summary>Degrees of freedom that a line takes beyond those where its frequency follows something that breathes: cosine and sine that bend up to five times more.</summary>
    public const int FreedomOfWidening = 6;

    private const int OwnShapes = 3;
    private const int WideShapes = OwnShapes + (FreedomOfWidening / 2);
    private const int MostShapes = (MostLines * FreedomOfLine) + FreedomOfWidening;
    private const double LowestHz = 0.6;
    private const double HighestHz = 12;

    // Less than a hundredth of such a line goes with what is slow.
    private const double FastLineHz = 3;
    private readonly double binRateHz;
    private readonly LineShapes shapes;
    private readonly double[] removedHz = new double[MostLines];
    private int lineCount;
    private SlowBasis slow;

    public LineRemover(SignalDesign design)
    {
        binRateHz = design.BinRateHz;
        shapes = new(design, MostShapes);
        slow = design.SlowOf(design.Options.LongestWindowSeconds);
    }

    /// <summary>Frequency of the line last looked for, Hz.</summary>
    public double LineHz { get; private set; }

    /// <summary>Frequencies of the lines that have been removed from the window, Hz, the strongest first.</summary>
    public ReadOnlySpan<double> RemovedHz => removedHz.AsSpan(0, lineCount);

    /// <summary>Cosine and sine of the line last removed from infrared, natural logarithm of light.</summary>
    public (double Cosine, double Sine) InInfrared { get; private set; }

    /// <summary>Cosine and sine of the line last removed from red, natural logarithm of light.</summary>
    public (double Cosine, double Sine) InRed { get; private set; }

    /// <summary>Whether a line has more ups and downs in its window than it has shapes once widened: of fewer it is all that is slow, the pulse with it.</summary>
    /// <param name="turns">Its turns in the window.</param>
    public static bool HasTurnsToWiden(double turns) => 2 * turns > FreedomOfLine + FreedomOfWidening;

    /// <summary>A new window: no line has been taken from it.</summary>
    /// <param name="removedBasis">What has been taken away from the window as slow.</param>
    public void Restart(SlowBasis removedBasis)
    {
        lineCount = 0;
        slow = removedBasis;
        shapes.Restart(removedBasis);
    }

    /// <summary>Takes the course of the window's light, by which what is added in counts is divided.</summary>
    /// <param name="logLights">Logarithms of infrared and red in turn, slow part and all.</param>
    public void Weigh(ReadOnlySpan<double> logLights) => shapes.Weigh(logLights);

    /// <summary>Removes lines of known frequencies from a new window and leaves what rides on the pulse: R is read without that, beats are seen with it.</summary>
    /// <param name="pairs">Infrared and red in turn.</param>
    /// <param name="hertz">Their frequencies.</param>
    /// <param name="isWide">Whether the first of them was widened.</param>
    public void RemoveAlone(Span<double> pairs, ReadOnlySpan<double> hertz, bool isWide)
    {
        foreach (var hz in hertz)
        {
            shapes.AddOwn(hz, 0, OwnShapes);
        }

        if (isWide)
        {
            shapes.AddOwn(hertz[0], OwnShapes, WideShapes);
        }

        shapes.Remove(pairs);
    }

    /// <summary>Takes more away about the line that was removed last: its frequency may have followed something that breathes, as far as a third of a hertz within the window.</summary>
    /// <param name="pairs">Infrared and red in turn, without the line.</param>
    public void Widen(Span<double> pairs)
    {
        shapes.AddOwn(LineHz, OwnShapes, WideShapes);
        shapes.Remove(pairs);
    }

    /// <summary>Takes a line that was found before out of the window loaded anew, as what is added in counts.</summary>
    /// <param name="pairs">Infrared and red in turn.</param>
    /// <param name="hz">Its frequency.</param>
    public void RemoveAdded(Span<double> pairs, double hz)
    {
        LineHz = hz;
        shapes.AddOwn(hz, 0, OwnShapes);
        shapes.Remove(pairs);
        removedHz[lineCount++] = hz;
    }

    /// <summary>Takes the second wave of the line that was removed last: a strong lamp bends the logarithm.</summary>
    /// <param name="pairs">Infrared and red in turn, without the line.</param>
    public void RemoveSecondWave(Span<double> pairs)
    {
        shapes.AddSecondWave(LineHz);
        shapes.Remove(pairs);
    }

    /// <summary>Takes what of that line rides on the pulse: where one of the pulse's own waves went with it, more was divided by the light than was added to it.</summary>
    /// <param name="pairs">Infrared and red in turn, without the line.</param>
    public void RemoveRiding(Span<double> pairs)
    {
        shapes.AddRiding(pairs, LineHz);
        shapes.Remove(pairs);
    }

    /// <summary>Finds the line without which both lights agree best and, where it explains enough of what they disagree by, in both halves, removes it from both.</summary>
    /// <param name="pairs">Infrared and red in turn; changed only when true is returned.</param>
    /// <param name="noisePower">Σ of squares that white noise has in red − R × infrared.</param>
    /// <param name="enoughShare">Share of the rest beyond noise that the line has to explain.</param>
    public bool TryRemove(Span<double> pairs, double noisePower, double enoughShare)
    {
        var lanes = MemoryMarshal.Cast<double, Vector128<double>>(pairs);
        var before = RatioSums.Over(pairs);
        LineHz = Strongest(lanes, before, slow);
        var (cosine, sine) = TransformAt(lanes, LineHz, Middle(lanes.Length));
        var power = PowerOf(LineHz, lanes.Length, slow);
        var without = Without(before, cosine, sine, power);
        var rest = before.Rest;
        if (rest - without.Rest < enoughShare * (rest - noisePower) || !IsSteady(lanes, without.Cross / without.Infrared))
        {
            return false;
        }

        InInfrared = (cosine.GetElement(0) / power.Cosine, sine.GetElement(0) / power.Sine);
        InRed = (cosine.GetElement(1) / power.Cosine, sine.GetElement(1) / power.Sine);
        shapes.AddOwn(LineHz, 0, OwnShapes);
        shapes.AddRiding(pairs, LineHz);
        shapes.Remove(pairs);
        removedHz[lineCount++] = LineHz;
        return true;
    }

    /// <summary>How both lights vary, and how far their disagreement is one line.</summary>
    /// <param name="pairs">Infrared and red in turn; left as they are.</param>
    public LightScatter Scatter(ReadOnlySpan<double> pairs)
    {
        var lanes = MemoryMarshal.Cast<double, Vector128<double>>(pairs);
        var whole = RatioSums.Over(pairs);
        var rest = whole.Rest;
        var lineHz = Strongest(lanes, whole, null);
        var left = RestWithout(lanes, whole, lineHz, null);
        var scale = 1.0 / lanes.Length;
        return new(scale * whole.Infrared, scale * whole.Red, scale * whole.Cross, rest > 0 ? 1 - (left / rest) : 0, lineHz);
    }

    // The sums that are left when the best sine of one frequency is taken from both channels.
    private static RatioSums Without(in RatioSums sums, Vector128<double> cosine, Vector128<double> sine, WavePower of)
    {
        var power = (cosine * cosine / of.Cosine) + (sine * sine / of.Sine);
        var cross = (cosine.GetElement(0) * cosine.GetElement(1) / of.Cosine) + (sine.GetElement(0) * sine.GetElement(1) / of.Sine);
        return sums with
        {
            Infrared = sums.Infrared - power.GetElement(0),
            Red = sums.Red - power.GetElement(1),
            Cross = sums.Cross - cross,
        };
    }

    private bool IsSteady(ReadOnlySpan<Vector128<double>> lanes, double ratio)
    {
        const double leastShare = 0.5;
        var half = lanes.Length / 2;
        var early = PowerInRest(lanes[..half], ratio);
        var late = PowerInRest(lanes[half..], ratio);
        return early > leastShare * late && late > leastShare * early;
    }

    private double PowerInRest(ReadOnlySpan<Vector128<double>> lanes, double ratio)
    {
        var (cosine, sine) = TransformAt(lanes, LineHz, 0);
        var inPhase = cosine.GetElement(1) - (ratio * cosine.GetElement(0));
        var quadrature = sine.GetElement(1) - (ratio * sine.GetElement(0));
        return ((inPhase * inPhase) + (quadrature * quadrature)) / lanes.Length;
    }

    // A window in which nothing was taken away as slow has no basis. Of a lamp many times the pulse a tenth is left at the nearest
    // frequency that is tried, more than the pulse itself: the two deepest valleys are looked at closely.
    private double Strongest(ReadOnlySpan<Vector128<double>> lanes, in RatioSums before, SlowBasis? removedBasis)
    {
        var step = binRateHz / lanes.Length / 3;
        var highest = Math.Min(HighestHz, 0.45 * binRateHz);
        var deepest = new DeepestLines();
        double last = double.PositiveInfinity, here = double.PositiveInfinity;
        for (var hz = LowestHz; hz <= highest; hz += step)
        {
            var next = RestWithout(lanes, before, hz, removedBasis);
            if (here < last && here <= next)
            {
                deepest.See(here, hz - step);
            }

            last = here;
            here = next;
        }

        deepest.See(here, highest);
        var (first, firstHz) = Closest(lanes, before, deepest.First.Hz, removedBasis);
        var (second, secondHz) = Closest(lanes, before, deepest.Second.Hz, removedBasis);
        return second < first ? secondHz : firstHz;
    }

    private (double Left, double Hz) Closest(ReadOnlySpan<Vector128<double>> lanes, in RatioSums before, double hz, SlowBasis? removedBasis)
    {
        var resolution = binRateHz / lanes.Length;
        for (var step = resolution / 6; step > resolution / 100; step /= 2)
        {
            hz = Better(lanes, before, hz, step, removedBasis);
        }

        return (RestWithout(lanes, before, hz, removedBasis), hz);
    }

    private double Better(ReadOnlySpan<Vector128<double>> lanes, in RatioSums before, double hz, double step, SlowBasis? removedBasis)
    {
        var here = RestWithout(lanes, before, hz, removedBasis);
        return RestWithout(lanes, before, hz + step, removedBasis) < here ? hz + step
            : RestWithout(lanes, before, hz - step, removedBasis) < here ? hz - step
            : hz;
    }

    private double RestWithout(ReadOnlySpan<Vector128<double>> lanes, in RatioSums before, double hz, SlowBasis? removedBasis)
    {
        var (cosine, sine) = TransformAt(lanes, hz, removedBasis is null ? 0 : Middle(lanes.Length));
        return Without(before, cosine, sine, PowerOf(hz, lanes.Length, removedBasis)).Rest;
    }

    // What is slow has next to nothing in common with a fast line. A short piece of no whole number of turns counts against a line.
    private WavePower PowerOf(double hz, int length, SlowBasis? removedBasis)
    {
        var turn = 2 * Math.PI * hz / binRateHz;
        return removedBasis is null ? new(length / 2.0, length / 2.0)
            : hz > FastLineHz ? WavePower.Of(turn, length)
            : WavePower.LeftBy(turn, removedBasis);
    }

    private static double Middle(int length) => (length - 1) / 2.0;

    private (Vector128<double> Cosine, Vector128<double> Sine) TransformAt(ReadOnlySpan<Vector128<double>> lanes, double hz, double origin)
    {
        var turn = 2 * Math.PI * hz / binRateHz;
        var (turnSine, turnCosine) = Math.SinCos(turn);
        var (sine, cosine) = Math.SinCos(-turn * origin);
        Vector128<double> inPhase = default, quadrature = default;
        foreach (var value in lanes)
        {
            inPhase += value * cosine;
            quadrature += value * sine;
            var next = (cosine * turnCosine) - (sine * turnSine);
            sine = (sine * turnCosine) + (cosine * turnSine);
            cosine = next;
        }

        return (inPhase, quadrature);
    }
}
