using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace PulseStream.Signal;

/// <summary>How much of each of six slow shapes is in a window: three even and three odd ones, infrared and red.</summary>
/// <remarks>Two lights in the two lanes of a fixed width, sums in one order: the result is the same on every processor.</remarks>
internal readonly ref struct SlowShares
{
    private readonly Vector128<double> even0;
    private readonly Vector128<double> even1;
    private readonly Vector128<double> even2;
    private readonly Vector128<double> odd0;
    private readonly Vector128<double> odd1;
    private readonly Vector128<double> odd2;

    private SlowShares(
        Vector128<double> even0,
        Vector128<double> even1,
        Vector128<double> even2,
        Vector128<double> odd0,
        Vector128<double> odd1,
        Vector128<double> odd2)
    {
        this.even0 = even0;
        this.even1 = even1;
        this.even2 = even2;
        this.odd0 = odd0;
        this.odd1 = odd1;
        this.odd2 = odd2;
    }

    /// <summary>Projects a window on a group of orthonormal shapes.</summary>
    /// <param name="lanes">Infrared and red of each place.</param>
    /// <param name="rows">The shapes from the start to the middle, the middle included where the window has one.</param>
    public static SlowShares Of(ReadOnlySpan<Vector128<double>> lanes, ReadOnlySpan<SlowRow> rows)
    {
        Vector128<double> e0 = default, e1 = default, e2 = default, o0 = default, o1 = default, o2 = default;
        ref readonly var late = ref lanes[^1];
        for (var n = 0; n < rows.Length; n++)
        {
            ref readonly var row = ref rows[n];
            var sum = lanes[n] + late;
            var difference = lanes[n] - late;
            late = ref Unsafe.Subtract(ref Unsafe.AsRef(in late), 1);
            e0 = Vector128.FusedMultiplyAdd(sum, Vector128.Create(row.Even0), e0);
            e1 = Vector128.FusedMultiplyAdd(sum, Vector128.Create(row.Even1), e1);
            e2 = Vector128.FusedMultiplyAdd(sum, Vector128.Create(row.Even2), e2);
            o0 = Vector128.FusedMultiplyAdd(difference, Vector128.Create(row.Odd0), o0);
            o1 = Vector128.FusedMultiplyAdd(difference, Vector128.Create(row.Odd1), o1);
            o2 = Vector128.FusedMultiplyAdd(difference, Vector128.Create(row.Odd2), o2);
        }

        return new(e0, e1, e2, o0, o1, o2);
    }

    /// <summary>Takes these shares away.</summary>
    /// <param name="lanes">Infrared and red of each place; changed.</param>
    /// <param name="rows">The shapes that the shares were found with.</param>
    public void Remove(Span<Vector128<double>> lanes, ReadOnlySpan<SlowRow> rows)
    {
        var (e0, e1, e2, o0, o1, o2) = (even0, even1, even2, odd0, odd1, odd2);
        ref var late = ref lanes[^1];
        for (var n = 0; n < rows.Length; n++)
        {
            ref readonly var row = ref rows[n];
            var even = e0 * Vector128.Create(row.Even0);
            even = Vector128.FusedMultiplyAdd(e1, Vector128.Create(row.Even1), even);
            even = Vector128.FusedMultiplyAdd(e2, Vector128.Create(row.Even2), even);
            var odd = o0 * Vector128.Create(row.Odd0);
            odd = Vector128.FusedMultiplyAdd(o1, Vector128.Create(row.Odd1), odd);
            odd = Vector128.FusedMultiplyAdd(o2, Vector128.Create(row.Odd2), odd);

            lanes[n] -= even + odd;
            late -= even - odd;
            late = ref Unsafe.Subtract(ref late, 1);
        }
    }
}
