using System.Reactive.Linq;
using PulseStream.Samples;
using PulseStream.Simulation;
using PulseStream.Sources;
using PulseStream.Tests.Sessions;

namespace PulseStream.Tests.Page;

/// <summary>A simulated recording that counts how often it is read.</summary>
internal sealed class CountedRecording(Scenario scenario) : Recording
{
    private readonly ScriptedRecording _recording = new(scenario);

    public int Subscriptions { get; private set; }

    public override RecordingHeader Header => _recording.Header;

    public override SampleTally Tally => _recording.Tally;

    public override IObservable<SampleBlock> Blocks(CancellationToken cancel) => Observable.Defer(() =>
    {
        Subscriptions++;
        return _recording.Blocks(cancel);
    });

    protected override void Dispose(bool disposing) => _recording.Dispose();
}
