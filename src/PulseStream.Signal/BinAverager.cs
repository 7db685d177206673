using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace PulseStream.Signal;

/// <summary>Averages the logarithms of both lights over the samples of a bin; a missing sample is missing from both and so leaves their ratio alone.</summary>
internal sealed class BinAverager(int samplesPerBin)
{
    // 16 lights of 1e18 counts are still a double: the sum of logarithms is the logarithm of the product.
    private const int MostFactors = 16;
    private long bin = -1;
    private Vector128<double> product = Vector128<double>.One;
    private Vector128<double> logarithms;
    private int count;

    /// <summary>Largest light that can be added, counts.</summary>
    public const double LargestCounts = 1e18;

    /// <summary>Turns to the bin of a sample; true when the one before it was begun and is told.</summary>
    /// <param name="index">Index of the sample.</param>
    /// <param name="room">Samples from this one to the end of its bin.</param>
    /// <param name="begun">The bin before.</param>
    public bool TryTurnTo(long index, out int room, out Bin begun)
    {
        var own = index / samplesPerBin;
        room = (int)(((own + 1) * samplesPerBin) - index);
        begun = default;
        var isTurned = own != bin && TryTake(out begun);
        bin = own;
        return isTurned;
    }

    /// <summary>Adds a sample's light, infrared and red, from 1 to <see cref="LargestCounts"/>.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Add(Vector128<double> light)
    {
        product *= light;
        count++;
        if (count % MostFactors == 0)
        {
            logarithms += NaturalLogarithm.Of(product);
            product = Vector128<double>.One;
        }
    }

    /// <summary>Adds a sample whose logarithms are known.</summary>
    public void AddLogarithms(Vector128<double> light)
    {
        logarithms += light;
        count++;
    }

    /// <summary>Tells the bin and starts anew; false where it held nothing.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public bool TryTake(out Bin complete)
    {
        var isBegun = count > 0;
        complete = isBegun ? new(bin, (logarithms + NaturalLogarithm.Of(product)) / count) : default;
        Clear();
        return isBegun;
    }

    /// <summary>Forgets a bin begun.</summary>
    public void Restart()
    {
        Clear();
        bin = -1;
    }

    private void Clear()
    {
        count = 0;
        product = Vector128<double>.One;
        logarithms = default;
    }
}
