using System.Globalization;
using PulseStream.Archive.Columns;
using PulseStream.Archive.Journaling;
using PulseStream.Archive.Sealing;
using PulseStream.Samples;
using PulseStream.Sources;

namespace PulseStream.Archive;

/// <summary>Writes a recording as one Parquet file like an archive's samples.parquet; rate and start stand in the file's metadata.</summary>
public sealed class ParquetRecordingWriter : IDisposable
{
    // A block may be of any length; a row group's room is fixed.
    private const int LongestChunk = 8192;

    private readonly RecordingHeader header;
    private readonly IReadOnlyList<int> channels;
    private readonly SampleFile file;
    private readonly ColumnFileWriter writer;

    /// <summary>Begins a file.</summary>
    /// <param name="path">The file.</param>
    /// <param name="header">The recording.</param>
    /// <param name="scan">What a first reading of it found.</param>
    public ParquetRecordingWriter(string path, RecordingHeader header, RecordingScan scan)
    {
        ArgumentNullException.ThrowIfNull(header);
        ArgumentNullException.ThrowIfNull(scan);
        this.header = header;
        channels = [.. Enumerable.Range(0, WireNames.Channels.Count).Where(channel => header.Columns.HasFlag(WireNames.Channels[channel].Column))];
        file = new SampleFile(channels, scan.WholeChannels);
        writer = new ColumnFileWriter(path, file.Columns);
    }

    /// <summary>Writes samples.</summary>
    /// <param name="block">Follows the block before it.</param>
    public void Write(SampleBlock block)
    {
        for (var at = 0; at < block.Samples.Length; at += LongestChunk)
        {
            var part = block.Samples.Span[at..Math.Min(at + LongestChunk, block.Samples.Length)];
            file.Append(SampleChunk.Of(block.FirstIndex + at, part, channels), writer);
        }
    }

    /// <summary>Writes the footer: the file is whole.</summary>
    public void Finish()
    {
        writer.WriteGroup();
        var metadata = new Dictionary<string, string>(StringComparer.Ordinal) { [ColumnFile.RateKey] = header.Rate.Hz.ToString("R", CultureInfo.InvariantCulture) };
        if (header.Start is { } start)
        {
            metadata[ColumnFile.StartKey] = start.ToString("O", CultureInfo.InvariantCulture);
        }

        writer.Close(metadata);
    }

    /// <inheritdoc/>
    public void Dispose() => writer.Dispose();
}
