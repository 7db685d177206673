using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace PulseStream.Signal;

/// <summary>
/// What a lamp can look like in a window, in either light, made orthonormal one shape after the other: light is added in counts,
/// so a logarithm sees it in inverse proportion to all the light there is, breathing and baseline with it.
/// </summary>
/// <remarks>log(T) − log(T − f) = f / T + ½ (f / T)² + …: the first term is the line's own shape, the second its second wave.</remarks>
internal sealed class LineShapes
{
    // What is left of a shape that the ones before it already hold.
    private const double LeastNewShare = 1e-6;
    private readonly double binRateHz;
    private readonly int longest;
    private readonly Vector128<double>[] room;
    private readonly Vector128<double>[] cosines;
    private readonly Vector128<double>[] sines;
    private readonly Vector128<double>[] weights;
    private SlowBasis slow;
    private int count;
    private int removed;

    // So many weights are one, from the first on: most windows have no line, and are not worth filling them for.
    private int unweighted;

    /// <summary>Room for so many shapes in the longest window.</summary>
    /// <param name="design">Bins and bases.</param>
    /// <param name="most">Shapes at most.</param>
    public LineShapes(SignalDesign design, int most)
    {
        binRateHz = design.BinRateHz;
        longest = design.LongestWindowBins;
        room = new Vector128<double>[most * longest];
        cosines = new Vector128<double>[longest];
        sines = new Vector128<double>[longest];
        weights = new Vector128<double>[longest];
        slow = design.SlowOf(design.Options.LongestWindowSeconds);
    }

    /// <summary>A new window: nothing has been taken from it, and its light is taken to be steady.</summary>
    /// <param name="removedBasis">What has been taken away from the window as slow.</param>
    public void Restart(SlowBasis removedBasis)
    {
        count = 0;
        removed = 0;
        slow = removedBasis;
        if (unweighted < slow.Length)
        {
            weights.AsSpan(0, slow.Length).Fill(Vector128<double>.One);
            unweighted = slow.Length;
        }
    }

    /// <summary>Takes the course of the light itself, by which each shape is divided.</summary>
    /// <param name="logLights">Logarithms of infrared and red in turn, slow part and all.</param>
    public void Weigh(ReadOnlySpan<double> logLights)
    {
        var lanes = MemoryMarshal.Cast<double, Vector128<double>>(logLights);
        Vector128<double> mean = default;
        foreach (var lane in lanes)
        {
            mean += lane;
        }

        mean /= lanes.Length;
        unweighted = 0;
        for (var n = 0; n < lanes.Length; n++)
        {
            var rise = lanes[n] - mean;
            weights[n] = Vector128.Create(Math.Exp(-rise[0]), Math.Exp(-rise[1]));
        }
    }

    /// <summary>Adds a line that drifts and bends as polynomials of these degrees do.</summary>
    /// <param name="hz">Its frequency.</param>
    /// <param name="firstDegree">The first.</param>
    /// <param name="endDegree">The one behind the last.</param>
    public void AddOwn(double hz, int firstDegree, int endDegree)
    {
        for (var degree = firstDegree; degree < endDegree; degree++)
        {
            for (var n = 0; n < slow.Length; n++)
            {
                cosines[n] = sines[n] = weights[n] * Legendre.Of(degree, (2 * (n + 0.5) / slow.Length) - 1);
            }

            AddTurning(hz);
        }
    }

    /// <summary>Adds what a line's second wave leaves.</summary>
    /// <param name="hz">The line's frequency.</param>
    public void AddSecondWave(double hz)
    {
        cosines.AsSpan(0, slow.Length).Fill(Vector128<double>.One);
        sines.AsSpan(0, slow.Length).Fill(Vector128<double>.One);
        AddTurning(2 * hz);
    }

    /// <summary>Adds what rides on infrared: one of the pulse's own waves that goes with the line was never light that is added.</summary>
    /// <param name="pairs">Infrared and red in turn.</param>
    /// <param name="hz">The line's frequency.</param>
    public void AddRiding(ReadOnlySpan<double> pairs, double hz)
    {
        var lanes = MemoryMarshal.Cast<double, Vector128<double>>(pairs);
        var size = Math.Sqrt(RatioSums.Over(pairs).Infrared / lanes.Length);
        for (var n = 0; n < lanes.Length; n++)
        {
            cosines[n] = sines[n] = Vector128.Create(lanes[n].ToScalar() / size);
        }

        AddTurning(hz);
    }

    /// <summary>Takes away what has been added since it was last done.</summary>
    /// <param name="pairs">Infrared and red in turn; changed.</param>
    public void Remove(Span<double> pairs)
    {
        var lanes = MemoryMarshal.Cast<double, Vector128<double>>(pairs);
        for (; removed < count; removed++)
        {
            Subtract(lanes, Shape(removed));
        }
    }

    private static void Subtract(Span<Vector128<double>> values, ReadOnlySpan<Vector128<double>> unit)
    {
        Vector128<double> share = default;
        for (var n = 0; n < values.Length; n++)
        {
            share += values[n] * unit[n];
        }

        for (var n = 0; n < values.Length; n++)
        {
            values[n] -= share * unit[n];
        }
    }

    private static Vector128<double> PowerOf(ReadOnlySpan<Vector128<double>> values)
    {
        Vector128<double> power = default;
        foreach (var value in values)
        {
            power += value * value;
        }

        return power;
    }

    private Span<Vector128<double>> Shape(int k) => room.AsSpan(k * longest, slow.Length);

    // Turns what has been left in both rooms, and takes what is slow out of it.
    private void AddTurning(double hz)
    {
        var angle = 2 * Math.PI * hz / binRateHz;
        for (var n = 0; n < slow.Length; n++)
        {
            var (sine, cosine) = Math.SinCos(angle * n);
            cosines[n] *= cosine;
            sines[n] *= sine;
        }

        Add(cosines.AsSpan(0, slow.Length));
        Add(sines.AsSpan(0, slow.Length));
    }

    // Gram-Schmidt, twice, because what rides on the pulse is partly held by the lines themselves.
    private void Add(Span<Vector128<double>> values)
    {
        slow.Remove(MemoryMarshal.Cast<Vector128<double>, double>(values));
        var shape = Shape(count);
        values.CopyTo(shape);
        var whole = PowerOf(shape);
        for (var pass = 0; pass < 2; pass++)
        {
            for (var k = 0; k < count; k++)
            {
                Subtract(shape, Shape(k));
            }
        }

        var left = PowerOf(shape);
        if (!Vector128.GreaterThanAll(left, whole * LeastNewShare))
        {
            return;
        }

        var scale = Vector128<double>.One / Vector128.Sqrt(left);
        foreach (ref var value in shape)
        {
            value *= scale;
        }

        count++;
    }
}
