using System.Diagnostics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace PulseStream.Signal;

/// <summary>The course of blood volume in a window, and how fast it comes: each value beside the next, so that two are taken at once.</summary>
internal sealed class BloodCourse(int mostBins)
{
    private readonly double[] volumes = new double[mostBins];
    private readonly double[] slopes = new double[mostBins];

    /// <summary>Bins of the window.</summary>
    public int Length { get; private set; }

    /// <summary>Blood volume, minus the natural logarithm of infrared.</summary>
    public ReadOnlySpan<double> Volumes => volumes.AsSpan(0, Length);

    /// <summary>Blood gained between the bin before and the bin after each bin; the first and the last have none.</summary>
    public Span<double> Slopes => slopes.AsSpan(0, Length);

    /// <summary>Takes the course of a window.</summary>
    /// <param name="pairs">Infrared and red in turn.</param>
    public void Take(ReadOnlySpan<double> pairs)
    {
        Length = pairs.Length / 2;
        var lanes = MemoryMarshal.Cast<double, Vector128<double>>(pairs);
        var own = volumes.AsSpan(0, lanes.Length);
        var n = 0;
        for (; n + 1 < lanes.Length; n += 2)
        {
            (-Vector128.Create(lanes[n].ToScalar(), lanes[n + 1].ToScalar())).StoreUnsafe(ref MemoryMarshal.GetReference(own), (nuint)n);
        }

        for (; n < lanes.Length; n++)
        {
            own[n] = -lanes[n].ToScalar();
        }

        TakeSlopes(own, Slopes);
    }

    private static void TakeSlopes(ReadOnlySpan<double> volumes, Span<double> slopes)
    {
        slopes[0] = 0;
        slopes[^1] = 0;
        var before = volumes[..^2];
        var after = volumes[2..];
        var own = slopes[1..^1];
        var n = 0;
        for (; n < own.Length - 1; n += 2)
        {
            (TwoAt(after, n) - TwoAt(before, n)).StoreUnsafe(ref MemoryMarshal.GetReference(own), (nuint)n);
        }

        for (; n < own.Length; n++)
        {
            own[n] = after[n] - before[n];
        }
    }

    /// <summary>A value and the next.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector128<double> TwoAt(ReadOnlySpan<double> values, int n)
    {
        Debug.Assert(n >= 0 && n + 2 <= values.Length);
        return Vector128.LoadUnsafe(in MemoryMarshal.GetReference(values), unchecked((nuint)n));
    }
}
