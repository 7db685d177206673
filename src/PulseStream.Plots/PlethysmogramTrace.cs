using PulseStream.Samples;
using PulseStream.Signal;

namespace PulseStream.Plots;

/// <summary>Gathers the plethysmogram of a recording as it is drawn.</summary>
/// <param name="header">The recording.</param>
internal sealed class PlethysmogramTrace(RecordingHeader header) : IObserver<SampleBlock>
{
    private readonly PlethysmogramFilter filter = new(header);

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
            var height = filter.Step(index, sample);
            if (!double.IsNaN(height))
            {
                Envelope.Add(index, height);
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
}
