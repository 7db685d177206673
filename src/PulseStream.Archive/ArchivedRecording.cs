using System.Reactive.Disposables;
using System.Reactive.Linq;
using System.Runtime.InteropServices;
using PulseStream.Archive.Columns;
using PulseStream.Archive.Journaling;
using PulseStream.Samples;
using PulseStream.Sources;

namespace PulseStream.Archive;

/// <summary>The samples of a sealed session as a recording, a row group in memory at a time, in blocks of a second at most.</summary>
public sealed class ArchivedRecording : Recording
{
    private readonly SessionCounts? counts;
    private readonly ColumnFileReader reader;
    private readonly IReadOnlyList<int> channels;
    private readonly SampleColumn<long> indices = new(WireNames.Sample, isDeltaPacked: true);
    private readonly IReadOnlyList<Column> values;
    private readonly int longestBlock;
    private long nextIndex;
    private SampleTally tally = SampleTally.Empty;

    internal ArchivedRecording(RecordingHeader header, SessionCounts? counts, ColumnFileReader reader, IReadOnlyList<int> channels)
    {
        Header = header;
        this.counts = counts;
        this.reader = reader;
        this.channels = channels;
        values = [.. channels.Select(c => NewColumn(WireNames.Channels[c].Name))];
        longestBlock = (int)header.Rate.FirstIndexOf(1);
    }

    /// <inheritdoc/>
    public override RecordingHeader Header { get; }

    /// <summary>Samples and gaps so far; at the end what the source had counted when it was recorded, refused rows included.</summary>
    public override SampleTally Tally => tally;

    /// <summary>Opens the samples of a session.</summary>
    /// <param name="path">The session's folder, or a file in it.</param>
    /// <exception cref="BadInputException">It is no sealed session, or a file of it was changed.</exception>
    public static ArchivedRecording Open(string path) => ArchivedSession.Open(path).OpenRecording() as ArchivedRecording
        ?? throw new BadInputException(path, "expected a session with samples, found one of an instrument's readings", "Name another");

    /// <inheritdoc/>
    public override IObservable<SampleBlock> Blocks(CancellationToken cancel) => Observable.Create<SampleBlock>(observer =>
    {
        try
        {
            Push(observer, cancel);
        }
        catch (BadInputException e)
        {
            observer.OnError(e);
            return Disposable.Empty;
        }

        observer.OnCompleted();
        return Disposable.Empty;
    });

    /// <inheritdoc/>
    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            reader.Dispose();
        }
    }

    private Column NewColumn(string name) => reader.TypeOf(name) == typeof(int)
        ? new SampleColumn<int>(name, isDeltaPacked: true)
        : new SampleColumn<double>(name, isDeltaPacked: false);

    private void Push(IObserver<SampleBlock> observer, CancellationToken cancel)
    {
        for (var group = 0; group < reader.GroupCount; group++)
        {
            reader.ReadGroup(group, [indices, .. values]);
            for (var row = 0; row < indices.Count;)
            {
                if (cancel.IsCancellationRequested)
                {
                    return;
                }

                var block = BlockFrom(row);
                Count(block);
                observer.OnNext(block);
                row += block.Samples.Length;
            }
        }

        tally = counts is null ? tally : new(counts.Samples, counts.Missing, counts.RefusedRows ?? 0, counts.Repeats ?? 0);
    }

    private void Count(SampleBlock block)
    {
        tally = tally with { Samples = tally.Samples + block.Samples.Length, Missing = tally.Missing + block.FirstIndex - nextIndex };
        nextIndex = block.EndIndex;
    }

    private SampleBlock BlockFrom(int row)
    {
        var first = indices.Values[row];
        var length = 1;
        while (length < longestBlock && row + length < indices.Count && indices.Values[row + length] == first + length)
        {
            length++;
        }

        var samples = new Sample[length];
        var doubles = MemoryMarshal.Cast<Sample, double>(samples.AsSpan());
        doubles.Fill(double.NaN);
        for (var i = 0; i < channels.Count; i++)
        {
            Spread(values[i], row, length, doubles[channels[i]..]);
        }

        return new(first, samples);
    }

    private static void Spread(Column column, int row, int length, Span<double> strided)
    {
        if (column is SampleColumn<int> whole)
        {
            var wholes = whole.Values.Slice(row, length);
            for (var i = 0; i < length; i++)
            {
                strided[i * SampleChunk.Stride] = wholes[i];
            }

            return;
        }

        var plain = ((SampleColumn<double>)column).Values.Slice(row, length);
        for (var i = 0; i < length; i++)
        {
            strided[i * SampleChunk.Stride] = plain[i];
        }
    }
}
