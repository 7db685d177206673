using System.Runtime.Intrinsics;
using PulseStream.Samples;

namespace PulseStream.Signal;

/// <summary>Averages the logarithms of both lights over the samples of a bin; a missing sample is missing from both and so leaves their ratio alone.</summary>
/// <param name="samplesPerBin">How many samples a bin has.</param>
/// <param name="hasRed">Whether the recording has two lights.</param>
internal sealed class BinAverager(int samplesPerBin, bool hasRed)
{
    // 16 lights of 1e18 counts are still a double: the sum of logarithms is the logarithm of the product.
    private const int MostFactors = 16;
    private const int MostTogether = 32;
    private readonly Vector128<double>[] together = new Vector128<double>[MostTogether];
    private long bin = -1;
    private long end;
    private Vector128<double> product = Vector128<double>.One;
    private Vector128<double> logarithms;
    private int count;

    /// <summary>Turns to the bin of a sample; true when the one before it was begun and is told.</summary>
    /// <param name="index">Index of the sample.</param>
    /// <param name="room">Samples from this one to the end of its bin.</param>
    /// <param name="begun">The bin before.</param>
    public bool TryTurnTo(long index, out int room, out Bin begun)
    {
        begun = default;
        var isTurned = (index >= end || bin < 0) && TryTake(out begun);
        if (index >= end || bin < 0)
        {
            bin = index / samplesPerBin;
            end = (bin + 1) * samplesPerBin;
        }

        room = (int)(end - index);
        return isTurned;
    }

    /// <summary>Averages bins of which every sample is there; none where they are too long for it, or one is begun.</summary>
    /// <param name="samples">As received, from the start of the bin that was turned to.</param>
    /// <param name="first">Index of the first bin.</param>
    /// <returns>Mean logarithms of the bins, of as many as are averaged at once; valid until the next call.</returns>
    public ReadOnlySpan<Vector128<double>> AverageWhole(ReadOnlySpan<Sample> samples, out long first)
    {
        first = bin;
        var length = count > 0 || samplesPerBin > MostFactors ? 0 : Math.Min(samples.Length / samplesPerBin, together.Length);
        var lights = together.AsSpan(0, length);
        foreach (ref var light in lights)
        {
            var factors = Vector128<double>.One;
            foreach (ref readonly var sample in samples[..samplesPerBin])
            {
                factors *= TwoLights.Of(sample, hasRed);
            }

            samples = samples[samplesPerBin..];
            light = NaturalLogarithm.Of(factors) / samplesPerBin;
        }

        return lights;
    }

    /// <summary>Adds the lights of samples of one bin.</summary>
    /// <param name="samples">As received.</param>
    public void Add(ReadOnlySpan<Sample> samples)
    {
        var factors = product;
        foreach (ref readonly var sample in samples)
        {
            factors *= TwoLights.Of(sample, hasRed);
            count++;
            if (count % MostFactors == 0)
            {
                logarithms += NaturalLogarithm.Of(factors);
                factors = Vector128<double>.One;
            }
        }

        product = factors;
    }

    /// <summary>Adds the blood volume of samples of one bin, a logarithm already, in the place of infrared.</summary>
    /// <param name="samples">As received.</param>
    public void AddPleth(ReadOnlySpan<Sample> samples)
    {
        foreach (ref readonly var sample in samples)
        {
            logarithms += Vector128.Create(-sample.Pleth, 0);
            count++;
        }
    }

    /// <summary>Tells the bin and starts anew; false where it held nothing.</summary>
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
