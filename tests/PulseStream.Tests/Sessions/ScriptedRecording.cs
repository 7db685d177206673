using System.Reactive.Disposables;
using System.Reactive.Linq;
using PulseStream.Samples;
using PulseStream.Simulation;
using PulseStream.Sources;

namespace PulseStream.Tests.Sessions;

/// <summary>A simulated recording as a source, which may break at its end.</summary>
internal sealed class ScriptedRecording(Scenario scenario, BadInputException? failure = null) : Recording
{
    private const int SamplesPerBlock = 25;

    private readonly SimulatedRecording _simulated = new(scenario);
    private long _samples;

    public override RecordingHeader Header => _simulated.Header;

    public override SampleTally Tally => SampleTally.Empty with { Samples = _samples };

    public override IObservable<SampleBlock> Blocks(CancellationToken cancel) => Observable.Create<SampleBlock>(observer =>
    {
        foreach (var block in _simulated.Blocks(SamplesPerBlock).TakeWhile(_ => !cancel.IsCancellationRequested))
        {
            _samples += block.Samples.Length;
            observer.OnNext(block);
        }

        if (failure is not null)
        {
            observer.OnError(failure);
        }
        else
        {
            observer.OnCompleted();
        }

        return Disposable.Empty;
    });

    protected override void Dispose(bool disposing)
    {
    }
}
