using System.Reactive.Linq;
using PulseStream.Samples;
using PulseStream.Sources;

namespace PulseStream.Page.Live;

/// <summary>A recording whose blocks somebody else sees as well, just before the session does.</summary>
internal sealed class WatchedRecording(Recording recording, Action<SampleBlock> saw) : Recording
{
    public override RecordingHeader Header => recording.Header;

    public override SampleTally Tally => recording.Tally;

    public override IObservable<SampleBlock> Blocks(CancellationToken cancel) => recording.Blocks(cancel).Do(saw);

    protected override void Dispose(bool disposing)
    {
        // The recording stays with whoever opened it.
    }
}
