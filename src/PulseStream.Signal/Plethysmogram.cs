using PulseStream.Samples;

namespace PulseStream.Signal;

/// <summary>The wave that people look at: blood volume in the pulse band, one value a sample, more blood upwards.</summary>
/// <remarks>Beer-Lambert: the logarithm of light falls in step with the blood in its way. A ready-made plethysmogram is only band-passed.</remarks>
public sealed class Plethysmogram
{
    private const int Order = 2;
    private const double HighestShareOfRate = 0.4;
    private readonly SectionChain chain;
    private bool isStarted;

    /// <summary>A wave at rest.</summary>
    /// <param name="rate">Sample rate.</param>
    /// <param name="options">Edges of the band.</param>
    public Plethysmogram(SampleRate rate, SignalOptions options)
    {
        var high = Math.Min(options.BandHighHz, HighestShareOfRate * rate.Hz);
        chain = new(ButterworthDesign.BandPass(Order, options.BandLowHz, high, rate.Hz));
    }

    /// <summary>The next value: relative change of infrared light, sign turned; or the plethysmogram's own unit. NaN where there is no light.</summary>
    /// <param name="sample">The next sample.</param>
    public double Step(in Sample sample)
    {
        var volume = double.IsNaN(sample.Pleth) ? -Math.Log(LightOf(sample)) : sample.Pleth;
        if (!double.IsFinite(volume))
        {
            return double.NaN;
        }

        if (!isStarted)
        {
            chain.SettleAt(volume);
            isStarted = true;
        }

        return chain.Step(volume);
    }

    /// <summary>Forgets everything: to be called after a gap.</summary>
    public void Restart() => isStarted = false;

    private static double LightOf(in Sample sample) =>
        double.IsNaN(sample.Ambient) ? sample.Infrared : sample.Infrared - sample.Ambient;
}
