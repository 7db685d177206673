using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace PulseStream.Signal;

/// <summary>How fast blood comes at each bin of a window.</summary>
internal static class BloodSlope
{
    /// <summary>Blood gained between the bin before and the bin after each bin; the first and the last have none.</summary>
    /// <param name="pairs">Infrared and red in turn; blood volume is minus infrared.</param>
    /// <param name="slopes">Half as many values.</param>
    public static void Take(ReadOnlySpan<double> pairs, Span<double> slopes)
    {
        var lanes = MemoryMarshal.Cast<double, Vector128<double>>(pairs);
        slopes[0] = 0;
        slopes[lanes.Length - 1] = 0;
        var before = lanes[..^2];
        var after = lanes[2..];
        var inner = slopes[1..];
        for (var n = 0; n < before.Length && n < after.Length && n < inner.Length; n++)
        {
            inner[n] = before[n].ToScalar() - after[n].ToScalar();
        }
    }
}
