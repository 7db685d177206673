using PulseStream.Archive;
using PulseStream.Cli.Commands;
using PulseStream.Cli.Inputs;
using PulseStream.Sources;
using PulseStream.Sources.Csv;
using PulseStream.Sources.Edf;
using PulseStream.Sources.Wfdb;

namespace PulseStream.Cli.Output;

/// <summary>Writes a recording in another format; a file has its name only once it is whole.</summary>
internal static class ConvertedFiles
{
    private const string Unfinished = ".part";

    // The ending of a WFDB annotation file names who made it.
    private const string Annotator = ".pulse";

    public static void WriteCsv(ConversionSource source, ConvertOrder order, CancellationToken cancel) => Whole(order.To, part =>
    {
        using var opened = source.Open(cancel);
        using var text = new StreamWriter(part);
        var writer = new CsvRecordingWriter(text, opened.Recording.Header.Columns, opened.Recording.Header.Rate);
        ConversionSource.Read(opened.Recording, writer.Write, cancel);
        Tell(order, opened.Recording);
    }, cancel);

    public static void WriteEdf(ConversionSource source, ConvertOrder order, CancellationToken cancel)
    {
        var scan = source.Scan(cancel);
        var notes = source.Notes(order, cancel);
        Whole(order.To, part =>
        {
            using var opened = source.Open(cancel);
            using var writer = new EdfRecordingWriter(part, opened.Recording.Header, scan, notes);
            ConversionSource.Read(opened.Recording, writer.Write, cancel);
            writer.Finish();
            Tell(order, opened.Recording);
            if (writer.CoarsestStep is { } step)
            {
                order.Say($"{order.To}: EDF has 16 bits; values are rounded to steps of {step:0.####}.");
            }
        }, cancel);
    }

    public static void WriteParquet(ConversionSource source, ConvertOrder order, CancellationToken cancel)
    {
        var scan = source.Scan(cancel);
        Whole(order.To, part =>
        {
            using var opened = source.Open(cancel);
            using var writer = new ParquetRecordingWriter(part, opened.Recording.Header, scan);
            ConversionSource.Read(opened.Recording, writer.Write, cancel);
            writer.Finish();
            Tell(order, opened.Recording);
        }, cancel);
    }

    // The header comes last: without it there is no record.
    public static void WriteWfdb(ConversionSource source, ConvertOrder order, CancellationToken cancel)
    {
        var path = Path.ChangeExtension(order.To, ".hea");
        var scan = source.Scan(cancel);
        var notes = source.Notes(order, cancel);
        using var opened = source.Open(cancel);
        File.Delete(path);
        using var writer = new WfdbRecordingWriter(path, opened.Recording.Header, scan);
        ConversionSource.Read(opened.Recording, writer.Write, cancel);
        if (cancel.IsCancellationRequested)
        {
            return;
        }

        if (order.HasAnnotations)
        {
            WfdbAnnotationFile.Write(Path.ChangeExtension(path, Annotator), notes);
        }

        writer.Finish();
        Tell(order, opened.Recording);
        if (!writer.IsExact)
        {
            order.Say($"{order.To}: values have more decimals than are kept; the last are rounded.");
        }
    }

    /// <summary>Writes beside the place and moves there what is whole.</summary>
    public static void Whole(string path, Action<string> write, CancellationToken cancel)
    {
        var part = path + Unfinished;
        try
        {
            write(part);
            if (!cancel.IsCancellationRequested)
            {
                File.Move(part, path, overwrite: true);
            }
        }
        finally
        {
            File.Delete(part);
        }
    }

    private static void Tell(ConvertOrder order, Recording recording) =>
        order.Say($"{recording.Header.Source}: {recording.Tally.Samples} samples converted, {recording.Tally.Missing} missing.");
}
