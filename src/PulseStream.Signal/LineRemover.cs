using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace PulseStream.Signal;

/// <summary>
/// Takes steady lines out of a window: mains light folded into the pulse band is one frequency added to both lights. It is
/// looked for where taking it away makes red and infrared agree best, and taken away jointly with the regression.
/// </summary>
/// <remarks>
/// Variable projection (Golub, Pereyra, SIAM J Numer Anal 1973;10:413): for each frequency the line's own size and R follow
/// by least squares, so only the frequency is searched. Light is added in counts, so a logarithm sees it in inverse
/// proportion to the rest of the light; mains frequency wanders by some hundredths of a hertz within seconds. Both make a
/// line's size and phase change slowly, and with the pulse: that is what its further columns are for.
/// </remarks>
internal sealed class LineRemover
{
    /// <summary>Lines that can be taken out of one window.</summary>
    public const int MostLines = 3;

    /// <summary>Degrees of freedom that one line takes: cosine and sine, as they are, drifting, bending and riding on the pulse.</summary>
    public const int FreedomOfLine = 8;

    /// <summary>Degrees of freedom that a line takes beyond those where its frequency follows something that breathes: cosine and sine that bend up to five times more.</summary>
    public const int FreedomOfWidening = 6;

    // Cosine and sine as they are, drifting and bending: what rides on the pulse can take half of its first wave along.
    private const int OwnShapes = 3;
    private const int AllShapes = FreedomOfLine / 2;
    private const int WideShapes = AllShapes + (FreedomOfWidening / 2);
    private const int MostColumns = (MostLines * FreedomOfLine) + FreedomOfWidening;
    private const double LowestHz = 0.6;
    private const double HighestHz = 12;

    // What is left of a column that the ones before it already hold.
    private const double LeastNewShare = 1e-6;
    private readonly double binRateHz;
    private readonly int longest;
    private readonly double[] room;
    private readonly double[] removedHz = new double[MostLines];
    private int columnCount;
    private int lineCount;
    private SlowBasis slow;

    public LineRemover(SignalDesign design)
    {
        binRateHz = design.BinRateHz;
        longest = design.LongestWindowBins;
        room = new double[(MostColumns + 2) * longest];
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

    /// <summary>A new window: no line has been taken from it.</summary>
    /// <param name="removedBasis">What has been taken away from the window as slow.</param>
    public void Restart(SlowBasis removedBasis)
    {
        columnCount = 0;
        lineCount = 0;
        slow = removedBasis;
    }

    /// <summary>Removes lines of known frequencies from a new window and leaves what rides on the pulse: R is read without that, beats are seen with it.</summary>
    /// <param name="pairs">Infrared and red in turn.</param>
    /// <param name="hertz">Their frequencies.</param>
    /// <param name="isWide">Whether the first of them was widened.</param>
    public void RemoveAlone(Span<double> pairs, ReadOnlySpan<double> hertz, bool isWide)
    {
        foreach (var hz in hertz)
        {
            LineHz = hz;
            Remove(pairs, 0, OwnShapes);
        }

        if (isWide)
        {
            LineHz = hertz[0];
            Remove(pairs, AllShapes, WideShapes);
        }
    }

    /// <summary>Takes more away about the line that was removed last: its frequency may have followed something that breathes, as far as a third of a hertz within the window.</summary>
    /// <param name="pairs">Infrared and red in turn, without the line.</param>
    public void Widen(Span<double> pairs) => Remove(pairs, AllShapes, WideShapes);

    /// <summary>Finds the line without which both lights agree best and, where it explains enough of what they disagree by, in both halves, removes it from both.</summary>
    /// <param name="pairs">Infrared and red in turn; changed only when true is returned.</param>
    /// <param name="noisePower">Σ of squares that white noise has in red − R × infrared.</param>
    /// <param name="enoughShare">Share of the rest beyond noise that the line has to explain.</param>
    public bool TryRemove(Span<double> pairs, double noisePower, double enoughShare)
    {
        var lanes = MemoryMarshal.Cast<double, Vector128<double>>(pairs);
        var before = RatioSums.Over(pairs);
        LineHz = Strongest(lanes, before);
        var (cosine, sine) = TransformAt(lanes, LineHz);
        var without = Without(before, cosine, sine, lanes.Length);
        var rest = before.Rest;
        if (rest - without.Rest < enoughShare * (rest - noisePower) || !IsSteady(lanes, without.Cross / without.Infrared))
        {
            return false;
        }

        var scale = 2.0 / lanes.Length;
        InInfrared = (scale * cosine.GetElement(0), scale * sine.GetElement(0));
        InRed = (scale * cosine.GetElement(1), scale * sine.GetElement(1));
        Remove(pairs, 0, AllShapes);
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
        var lineHz = Strongest(lanes, whole);
        var left = RestWithout(lanes, whole, lineHz);
        var scale = 1.0 / lanes.Length;
        return new(scale * whole.Infrared, scale * whole.Red, scale * whole.Cross, rest > 0 ? 1 - (left / rest) : 0, lineHz);
    }

    // The sums that are left when the best sine of one frequency is taken from both channels (sine and cosine nearly orthogonal).
    private static RatioSums Without(in RatioSums sums, Vector128<double> cosine, Vector128<double> sine, int length)
    {
        var scale = 2.0 / length;
        var power = ((cosine * cosine) + (sine * sine)) * scale;
        var cross = ((cosine.GetElement(0) * cosine.GetElement(1)) + (sine.GetElement(0) * sine.GetElement(1))) * scale;
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
        var (cosine, sine) = TransformAt(lanes, LineHz);
        var inPhase = cosine.GetElement(1) - (ratio * cosine.GetElement(0));
        var quadrature = sine.GetElement(1) - (ratio * sine.GetElement(0));
        return ((inPhase * inPhase) + (quadrature * quadrature)) / lanes.Length;
    }

    private double Strongest(ReadOnlySpan<Vector128<double>> lanes, in RatioSums before)
    {
        var resolution = binRateHz / lanes.Length;
        var highest = Math.Min(HighestHz, 0.45 * binRateHz);
        double least = double.PositiveInfinity, bestHz = LowestHz;
        for (var hz = LowestHz; hz <= highest; hz += resolution / 3)
        {
            var rest = RestWithout(lanes, before, hz);
            if (rest < least)
            {
                least = rest;
                bestHz = hz;
            }
        }

        for (var step = resolution / 6; step > resolution / 100; step /= 2)
        {
            bestHz = Better(lanes, before, bestHz, step);
        }

        return bestHz;
    }

    private double Better(ReadOnlySpan<Vector128<double>> lanes, in RatioSums before, double hz, double step)
    {
        var here = RestWithout(lanes, before, hz);
        return RestWithout(lanes, before, hz + step) < here ? hz + step
            : RestWithout(lanes, before, hz - step) < here ? hz - step
            : hz;
    }

    private double RestWithout(ReadOnlySpan<Vector128<double>> lanes, in RatioSums before, double hz)
    {
        var (cosine, sine) = TransformAt(lanes, hz);
        return Without(before, cosine, sine, lanes.Length).Rest;
    }

    private (Vector128<double> Cosine, Vector128<double> Sine) TransformAt(ReadOnlySpan<Vector128<double>> lanes, double hz)
    {
        var (turnSine, turnCosine) = Math.SinCos(2 * Math.PI * hz / binRateHz);
        double cosine = 1, sine = 0;
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

    private void Remove(Span<double> pairs, int firstShape, int endShape)
    {
        var pulse = Math.Sqrt(RatioSums.Over(pairs).Infrared / (pairs.Length / 2));
        var first = columnCount;
        for (var shape = firstShape; shape < endShape; shape++)
        {
            AddColumns(pairs, shape, pulse);
        }

        var lanes = MemoryMarshal.Cast<double, Vector128<double>>(pairs);
        for (var k = first; k < columnCount; k++)
        {
            var column = Column(k, lanes.Length);
            Vector128<double> share = default;
            for (var n = 0; n < lanes.Length; n++)
            {
                share += lanes[n] * column[n];
            }

            for (var n = 0; n < lanes.Length; n++)
            {
                lanes[n] -= share * column[n];
            }
        }
    }

    private Span<double> Column(int k, int length) => room.AsSpan(k * longest, length);

    private void AddColumns(ReadOnlySpan<double> pairs, int shape, double pulse)
    {
        var length = pairs.Length / 2;
        var pair = room.AsSpan(MostColumns * longest, pairs.Length);
        var angle = 2 * Math.PI * LineHz / binRateHz;
        for (var n = 0; n < length; n++)
        {
            var time = (2 * (n + 0.5) / length) - 1;
            var size = shape == AllShapes - 1 ? pairs[2 * n] / pulse : Legendre.Of(shape < AllShapes ? shape : shape - 1, time);
            var (sine, cosine) = Math.SinCos(angle * n);
            pair[2 * n] = size * cosine;
            pair[(2 * n) + 1] = size * sine;
        }

        slow.Remove(pair);
        AddColumn(pair, 0);
        AddColumn(pair, 1);
    }

    // Gram-Schmidt, twice, because what rides on the pulse is partly held by the lines themselves.
    private void AddColumn(ReadOnlySpan<double> pair, int lane)
    {
        var length = pair.Length / 2;
        var column = Column(columnCount, length);
        for (var n = 0; n < length; n++)
        {
            column[n] = pair[(2 * n) + lane];
        }

        var whole = Projection.Dot(column, column);
        for (var pass = 0; pass < 2; pass++)
        {
            for (var k = 0; k < columnCount; k++)
            {
                Projection.Subtract(column, Column(k, length));
            }
        }

        var left = Projection.Dot(column, column);
        if (left > LeastNewShare * whole)
        {
            var scale = 1 / Math.Sqrt(left);
            for (var n = 0; n < length; n++)
            {
                column[n] *= scale;
            }

            columnCount++;
        }
    }
}
