using System.Runtime.Intrinsics;

namespace PulseStream.Signal;

/// <summary>Mean of the samples of one bin.</summary>
/// <param name="Index">Bin index: sample index over samples per bin.</param>
/// <param name="Light">Natural logarithms of infrared and of red light, in this order; red is 0 where the recording has none.</param>
internal readonly record struct Bin(long Index, Vector128<double> Light)
{
    /// <summary>Natural logarithm of infrared light.</summary>
    public double Infrared => Light[0];

    /// <summary>Natural logarithm of red light; 0 where the recording has none.</summary>
    public double Red => Light[1];
}
