using PulseStream.Samples;

namespace PulseStream.Sources;

/// <summary>A recording or an instrument that is open and ready to be read once, start to end.</summary>
public abstract class Recording : IDisposable
{
    /// <summary>What is known before the first sample.</summary>
    public abstract RecordingHeader Header { get; }

    /// <summary>What has been counted so far; final once <see cref="Blocks"/> has completed.</summary>
    public abstract SampleTally Tally { get; }

    /// <summary>
    /// The samples in order, pushed while subscribed. Completes at the end or when <paramref name="cancel"/> is set;
    /// everything read until then has been pushed. Subscribe once.
    /// </summary>
    /// <param name="cancel">Ends the stream early, as if the recording ended there.</param>
    /// <exception cref="BadInputException">Arrives as OnError: the recording as a whole cannot be used.</exception>
    public abstract IObservable<SampleBlock> Blocks(CancellationToken cancel);

    /// <summary>Closes the file or the port.</summary>
    public void Dispose()
    {
        Dispose(disposing: true);
        GC.SuppressFinalize(this);
    }

    /// <summary>Closes what the source holds open.</summary>
    /// <param name="disposing">True from <see cref="Dispose()"/>.</param>
    protected abstract void Dispose(bool disposing);
}
