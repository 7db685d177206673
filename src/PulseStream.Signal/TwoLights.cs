using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using PulseStream.Samples;

namespace PulseStream.Signal;

/// <summary>The light of a sample that has a logarithm.</summary>
internal static class TwoLights
{
    /// <summary>Largest light, counts.</summary>
    public const double LargestCounts = 1e18;

    /// <summary>Infrared and red with ambient taken off, from 1 to <see cref="LargestCounts"/>.</summary>
    /// <remarks>A dark detector still has a logarithm: one count is less than any finger lets through. Red that is not there is one count.</remarks>
    /// <param name="sample">As received.</param>
    /// <param name="hasRed">Whether the recording has two lights.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector128<double> Of(in Sample sample, bool hasRed)
    {
        var counts = Vector128.Create(sample.Infrared, hasRed ? sample.Red : 1);
        var light = double.IsNaN(sample.Ambient) ? counts : counts - Vector128.Create(sample.Ambient);

        // The operand behind is the one that is told where either is no number: such a sample stays one.
        return Vector128.MinNative(Vector128.Create(LargestCounts), Vector128.MaxNative(Vector128<double>.One, light));
    }
}
