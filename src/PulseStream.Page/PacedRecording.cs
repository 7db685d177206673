using System.Reactive.Linq;
using PulseStream.Samples;
using PulseStream.Sources;

namespace PulseStream.Page;

/// <summary>
/// A recording played at the pace at which it was recorded, or a multiple of it, in pieces short enough for a wave that
/// moves smoothly. A gap takes the time it took. The thread that subscribes plays.
/// </summary>
public sealed class PacedRecording : Recording
{
    // A wave looks smooth from 25 updates a second on; 30 leave room for a machine that is late.
    private const double UpdatesPerSecond = 30;

    private readonly Recording _recording;
    private readonly double _speed;
    private readonly TimeProvider _clock;

    /// <summary>Wraps an open recording.</summary>
    /// <param name="recording">Closed with this one.</param>
    /// <param name="speed">How many times as fast as it was recorded, above 0.</param>
    /// <param name="clock">By which it is paced.</param>
    /// <exception cref="ArgumentOutOfRangeException">The speed is not above 0.</exception>
    public PacedRecording(Recording recording, double speed, TimeProvider clock)
    {
        _speed = speed > 0 && double.IsFinite(speed) ? speed : throw new ArgumentOutOfRangeException(nameof(speed), speed, "A speed is above 0.");
        _recording = recording;
        _clock = clock;
    }

    /// <inheritdoc/>
    public override RecordingHeader Header => _recording.Header;

    /// <inheritdoc/>
    public override SampleTally Tally => _recording.Tally;

    /// <inheritdoc/>
    public override IObservable<SampleBlock> Blocks(CancellationToken cancel) => Observable.Defer(() =>
    {
        var began = _clock.GetTimestamp();
        return _recording.Blocks(cancel)
            .SelectMany(Pieces)
            .Do(piece => WaitFor(piece, began, cancel));
    });

    /// <inheritdoc/>
    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            _recording.Dispose();
        }
    }

    private IEnumerable<SampleBlock> Pieces(SampleBlock block)
    {
        var length = Math.Max(1, (int)(Header.Rate.Hz * _speed / UpdatesPerSecond));
        for (var from = 0; from < block.Samples.Length; from += length)
        {
            yield return new SampleBlock(block.FirstIndex + from, block.Samples.Slice(from, Math.Min(length, block.Samples.Length - from)));
        }
    }

    // Once cancelled, what has been read already is handed on without waiting: it has been counted.
    private void WaitFor(SampleBlock piece, long began, CancellationToken cancel)
    {
        var due = TimeSpan.FromSeconds(Header.Rate.SecondsAt(piece.EndIndex) / _speed);
        var wait = due - _clock.GetElapsedTime(began);
        if (wait > TimeSpan.Zero)
        {
            try
            {
                Task.Delay(wait, _clock, cancel).Wait(cancel);
            }
            catch (OperationCanceledException)
            {
                // The recording below notices the same and ends.
            }
        }
    }
}
