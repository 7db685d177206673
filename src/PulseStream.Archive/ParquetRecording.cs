using System.Globalization;
using PulseStream.Archive.Columns;
using PulseStream.Samples;
using PulseStream.Sources.Csv;

namespace PulseStream.Archive;

/// <summary>A Parquet file of samples that <see cref="ParquetRecordingWriter"/> wrote, apart from any archive.</summary>
public static class ParquetRecording
{
    private const string Remedy = "Give a file that 'convert' wrote, or a session's folder";

    /// <summary>Opens a file.</summary>
    /// <param name="path">The file.</param>
    /// <param name="options">What is known beside it.</param>
    /// <exception cref="BadInputException">It is no such file, or it was changed.</exception>
    public static ArchivedRecording Open(string path, CsvOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        var reader = new ColumnFileReader(path);
        try
        {
            int[] channels = [.. Enumerable.Range(0, WireNames.Channels.Count).Where(channel => reader.TypeOf(WireNames.Channels[channel].Name) is not null)];
            var columns = WireNames.ColumnsOf(channels.Select(channel => WireNames.Channels[channel].Name));
            if (reader.TypeOf(WireNames.Sample) != typeof(long) || (columns & (SampleColumns.Infrared | SampleColumns.Pleth)) == SampleColumns.None)
            {
                throw new BadInputException(path, $"expected columns '{WireNames.Sample}' and 'infrared' or 'pleth', found otherwise", Remedy);
            }

            var rate = options.RateHz ?? (double.TryParse(reader.MetadataOf(ColumnFile.RateKey), CultureInfo.InvariantCulture, out var told) ? told : double.NaN);
            if (!SampleRate.IsMeasured(rate))
            {
                throw new BadInputException(path, $"its rate is not told, or not {SampleRate.MeasuredRange}", "Give it with --rate");
            }

            var header = new RecordingHeader(Path.GetFileName(path), new SampleRate(rate), columns, options.FullScaleCounts, options.Start ?? StartOf(reader));
            return new ArchivedRecording(header, counts: null, reader, channels);
        }
        catch
        {
            reader.Dispose();
            throw;
        }
    }

    private static DateTimeOffset? StartOf(ColumnFileReader reader) =>
        DateTimeOffset.TryParseExact(reader.MetadataOf(ColumnFile.StartKey), "O", CultureInfo.InvariantCulture, DateTimeStyles.None, out var start) ? start : null;
}
