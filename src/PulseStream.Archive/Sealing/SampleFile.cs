using PulseStream.Archive.Columns;
using PulseStream.Archive.Journaling;

namespace PulseStream.Archive.Sealing;

/// <summary>Turns samples into a Parquet file, one row group in memory at a time.</summary>
internal sealed class SampleFile
{
    private readonly IReadOnlyList<int> channels;
    private readonly SampleColumn<long> indices = new(WireNames.Sample, isDeltaPacked: true);
    private readonly SampleColumn<int>?[] whole;
    private readonly SampleColumn<double>?[] plain;

    /// <summary>Begins before the first sample.</summary>
    /// <param name="channels">Channels that the recording has.</param>
    /// <param name="wholeChannels">One bit a channel, from the lowest: its values are whole numbers.</param>
    public SampleFile(IReadOnlyList<int> channels, int wholeChannels)
    {
        this.channels = channels;
        whole = [.. channels.Select(c => IsWhole(c) ? new SampleColumn<int>(WireNames.Channels[c].Name, isDeltaPacked: true) : null)];
        plain = [.. channels.Select(c => IsWhole(c) ? null : new SampleColumn<double>(WireNames.Channels[c].Name, isDeltaPacked: false))];
        bool IsWhole(int channel) => (wholeChannels & (1 << channel)) != 0;
    }

    /// <summary>Its columns, the index first.</summary>
    public IReadOnlyList<Column> Columns => [indices, .. channels.Select((_, i) => (Column?)whole[i] ?? plain[i]!)];

    /// <summary>Writes the file and waits until the disk has it.</summary>
    /// <param name="path">Where.</param>
    /// <param name="journal">The samples.</param>
    /// <param name="channels">Channels that the recording has.</param>
    /// <returns>How many samples, and the index just past the last.</returns>
    public static (long Samples, long EndIndex) Write(string path, Journal journal, IReadOnlyList<int> channels)
    {
        var file = new SampleFile(channels, journal.WholeChannels());
        using var writer = new ColumnFileWriter(path, file.Columns);
        var end = 0L;
        foreach (var chunk in journal.Samples())
        {
            file.Append(chunk, writer);
            end = chunk.FirstIndex + chunk.Count;
        }

        writer.WriteGroup();
        writer.Close();
        return (writer.Rows, end);
    }

    /// <summary>Adds samples; a full row group is written before them.</summary>
    /// <param name="chunk">Samples of the same channels.</param>
    /// <param name="writer">The file.</param>
    public void Append(SampleChunk chunk, ColumnFileWriter writer)
    {
        if (indices.Count + chunk.Count > ColumnFile.RowsPerGroup)
        {
            writer.WriteGroup();
        }

        var rows = indices.Extend(chunk.Count);
        for (var i = 0; i < rows.Length; i++)
        {
            rows[i] = chunk.FirstIndex + i;
        }

        for (var i = 0; i < channels.Count; i++)
        {
            if (plain[i] is { } doubles)
            {
                chunk.CopyTo(channels, channels[i], doubles.Extend(chunk.Count));
            }
            else
            {
                chunk.CopyTo(channels, channels[i], whole[i]!.Extend(chunk.Count));
            }
        }
    }
}
