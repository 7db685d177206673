using System.Reactive.Linq;
using PulseStream.Samples;
using PulseStream.Sources;

namespace PulseStream.Sessions;

/// <summary>A recording whose blocks somebody else sees as well, just before the session does.</summary>
/// <param name="recording">Stays with whoever opened it.</param>
/// <param name="saw">Sees each block; the session waits for it.</param>
public sealed class WatchedRecording(Recording recording, Action<SampleBlock> saw) : Recording
{
    /// <inheritdoc/>
    public override RecordingHeader Header => recording.Header;

    /// <inheritdoc/>
    public override SampleTally Tally => recording.Tally;

    /// <inheritdoc/>
    public override IObservable<SampleBlock> Blocks(CancellationToken cancel) => recording.Blocks(cancel).Do(saw);

    /// <inheritdoc/>
    protected override void Dispose(bool disposing)
    {
        // The recording stays with whoever opened it.
    }
}
