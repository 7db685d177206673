using System.Reactive.Linq;
using PulseStream.Readings;
using PulseStream.Samples;
using PulseStream.Sources;

namespace PulseStream.Archive;

/// <summary>What an instrument showed, second by second, where its samples are not to be had. It has no sample and no light.</summary>
/// <param name="source">Name of the file or session, as it is shown to people.</param>
/// <param name="start">The instant of second 0 with its local offset, where known.</param>
/// <param name="seconds">The seconds in order, without a gap.</param>
/// <param name="refusedRows">Rows or frames that could not be read.</param>
public sealed class ShownRecording(string source, DateTimeOffset? start, IEnumerable<Second> seconds, long refusedRows) : Recording
{
    // A session has a rate; none of these samples, of which there are none, has it.
    private static readonly SampleRate NoRate = new(SampleRate.LowestHz);

    /// <inheritdoc/>
    public override RecordingHeader Header { get; } = new(source, NoRate, SampleColumns.None, FullScaleCounts: null, start);

    /// <inheritdoc/>
    public override SampleTally Tally { get; } = SampleTally.Empty with { RefusedRows = refusedRows };

    /// <summary>The seconds in order.</summary>
    public IEnumerable<Second> Seconds => seconds;

    /// <summary>Whether a second had a finger in the clip.</summary>
    /// <param name="second">What the instrument says of it.</param>
    public static bool HasFinger(Second second) => ((second.Unusable?.Reasons ?? Reasons.None) & (Reasons.NoFinger | Reasons.MissingSamples)) == Reasons.None;

    /// <summary>No block: there are no samples.</summary>
    /// <param name="cancel">Of no effect.</param>
    public override IObservable<SampleBlock> Blocks(CancellationToken cancel) => Observable.Empty<SampleBlock>();

    /// <inheritdoc/>
    protected override void Dispose(bool disposing)
    {
        // Nothing is held open.
    }
}
