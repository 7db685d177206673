using PulseStream.Samples;

namespace PulseStream.Signal;

/// <summary>
/// The plethysmogram as it is drawn: −100 ln of infrared light, so that more blood is up and 1 is one percent of the light;
/// or the recording's own where it has no light. Drift and noise are filtered away; gaps stay gaps.
/// </summary>
/// <remarks>Beer-Lambert: the logarithm of light falls linearly with the blood in its way.</remarks>
public sealed class PlethysmogramFilter
{
    // First order: it takes breathing and drift away and shifts a beat by less than a twentieth of a second.
    private const int FilterOrder = 1;
    private const double LowHz = 0.3;
    private const double HighHz = 12;
    private const double HighestShareOfRate = 0.4;

    // Shorter gaps are bridged inside the filter; after longer ones it starts anew.
    private const double BridgedSeconds = 0.5;
    private const double Percent = 100;

    private readonly SectionChain chain;
    private readonly bool hasLight;
    private readonly bool hasAmbient;
    private readonly long bridgedSamples;
    private double lastInput = double.NaN;
    private long lastIndex = -1;

    /// <summary>A filter before the first sample.</summary>
    /// <param name="header">The recording.</param>
    public PlethysmogramFilter(RecordingHeader header)
    {
        var rate = header.Rate.Hz;
        chain = new(ButterworthDesign.BandPass(FilterOrder, LowHz, Math.Min(HighHz, HighestShareOfRate * rate), rate));
        hasLight = header.Columns.HasFlag(SampleColumns.Infrared);
        hasAmbient = header.Columns.HasFlag(SampleColumns.Ambient);
        bridgedSamples = (long)(BridgedSeconds * rate);
    }

    /// <summary>The height of the next sample, in percent of the light; NaN where the sample has none.</summary>
    /// <param name="index">Later than the one before; a jump is a gap.</param>
    /// <param name="sample">The sample.</param>
    public double Step(long index, in Sample sample)
    {
        var input = InputOf(sample);
        return double.IsFinite(input) ? Step(index, input) : double.NaN;
    }

    private double InputOf(in Sample sample)
    {
        if (!hasLight)
        {
            return sample.Pleth;
        }

        var light = hasAmbient && !double.IsNaN(sample.Ambient) ? sample.Infrared - sample.Ambient : sample.Infrared;
        return -Percent * Math.Log(light);
    }

    private double Step(long index, double input)
    {
        var missing = index - lastIndex - 1;
        if (double.IsNaN(lastInput) || missing > bridgedSamples)
        {
            chain.SettleAt(input);
        }
        else
        {
            for (var i = 0; i < missing; i++)
            {
                chain.Step(lastInput);
            }
        }

        lastInput = input;
        lastIndex = index;
        return chain.Step(input);
    }
}
