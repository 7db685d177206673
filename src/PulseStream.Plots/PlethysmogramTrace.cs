using PulseStream.Samples;
using PulseStream.Signal;

namespace PulseStream.Plots;

/// <summary>
/// The plethysmogram as it is drawn: −100 ln of infrared light, so that more blood is up and 1 is one percent of the light;
/// or the recording's own where it has no light. Drift and noise are filtered away; gaps stay gaps.
/// </summary>
/// <remarks>Beer-Lambert: the logarithm of light falls linearly with the blood in its way.</remarks>
internal sealed class PlethysmogramTrace : IObserver<SampleBlock>
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

    /// <summary>A trace without a sample.</summary>
    /// <param name="header">The recording.</param>
    public PlethysmogramTrace(RecordingHeader header)
    {
        var rate = header.Rate.Hz;
        chain = new(ButterworthDesign.BandPass(FilterOrder, LowHz, Math.Min(HighHz, HighestShareOfRate * rate), rate));
        hasLight = header.Columns.HasFlag(SampleColumns.Infrared);
        hasAmbient = header.Columns.HasFlag(SampleColumns.Ambient);
        bridgedSamples = (long)(BridgedSeconds * rate);
    }

    /// <summary>What was drawn so far, time in sample indices.</summary>
    public Envelope Envelope { get; } = new();

    /// <summary>Index just past the last sample.</summary>
    public long EndIndex { get; private set; }

    /// <summary>Why the recording could not be read to its end; null where it could.</summary>
    public Exception? Failure { get; private set; }

    /// <inheritdoc/>
    public void OnNext(SampleBlock value)
    {
        var index = value.FirstIndex;
        foreach (ref readonly var sample in value.Samples.Span)
        {
            var input = InputOf(sample);
            if (double.IsFinite(input))
            {
                Step(index, input);
            }

            index++;
        }

        EndIndex = value.EndIndex;
    }

    /// <inheritdoc/>
    public void OnError(Exception error) => Failure = error;

    /// <inheritdoc/>
    public void OnCompleted()
    {
        // Every sample has been drawn already.
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

    private void Step(long index, double input)
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

        Envelope.Add(index, chain.Step(input));
        lastInput = input;
        lastIndex = index;
    }
}
