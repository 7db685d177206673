using System.CommandLine;
using PulseStream.Cli.Inputs;
using PulseStream.Cli.Options;
using PulseStream.Cli.Output;
using PulseStream.Samples;
using PulseStream.Sources;

namespace PulseStream.Cli.Commands;

/// <summary>`convert`: between the formats of recordings.</summary>
internal sealed class ConvertCommand
{
    private const string Description =
        """
        Converts a recording. IN is CSV, a WFDB record (.hea), EDF or EDF+ (.edf), Parquet (.parquet),
        or the folder or a file of an archived session. What OUT ends in tells the format:
          .csv      text
          .hea      a WFDB record, format 16, 24 or 32 (the narrowest that holds every count)
          .edf      EDF+; 16 bits, so that counts more than 65,534 apart are rounded, which is said
          .parquet  samples as an archive holds them, rate and start in the file's metadata
          .json     what the recording says of SpO2 and pulse, as a FHIR R4 Bundle of Observations
        """;

    private readonly Argument<string> _from = new("IN") { Description = "recording to read; - for CSV on standard input" };
    private readonly Argument<string> _to = new("OUT") { Description = "file to write" };
    private readonly Option<bool> _annotations = new("--annotations") { Description = "write what the recording says as well: beats and accepted readings beside a .hea as NAME.pulse (MIT annotations), readings within an .edf (EDF+ annotations)" };
    private readonly Option<string?> _person = new("--person") { HelpName = "ID", Description = "pseudonym of the person, for FHIR" };
    private readonly Option<bool> _quiet = new("--quiet") { Description = "no diagnostics on standard error, failures excepted" };
    private readonly RecordingOptions _recording = new();
    private readonly Surroundings _surroundings;
    private readonly ResultStream _results;

    private ConvertCommand(Surroundings surroundings, ResultStream results) => (_surroundings, _results) = (surroundings, results);

    public static Command Of(Surroundings surroundings, ResultStream results)
    {
        var convert = new ConvertCommand(surroundings, results);
        var command = new Command("convert", Description) { convert._from, convert._to };
        convert._from.Validators.Add(PathArguments.RefuseUnknownOptions);
        convert._to.Validators.Add(PathArguments.RefuseUnknownOptions);
        convert._recording.AddTo(command);
        command.Add(convert._annotations);
        command.Add(convert._person);
        command.Add(convert._quiet);
        command.SetAction((ParseResult parsed, CancellationToken cancel) => Task.Run(() => convert.Run(parsed, cancel), CancellationToken.None));
        return command;
    }

    private int Run(ParseResult parsed, CancellationToken cancel)
    {
        Action<string> say = parsed.GetValue(_quiet) ? static _ => { } : _surroundings.Error.WriteLine;
        var person = parsed.GetValue(_person) is { } told ? Archive.Pseudonym.Checked(_person.Name, told) : null;
        var to = parsed.GetRequiredValue(_to);
        var order = new ConvertOrder(parsed.GetRequiredValue(_from), to, _recording.OptionsOf(parsed, say), _recording.MapOf(parsed), person, say) { HasAnnotations = parsed.GetValue(_annotations) };
        if (order.HasAnnotations && RecordingFile.FormatOf(to) is not (RecordingFormat.Wfdb or RecordingFormat.Edf))
        {
            throw new BadInputException(_annotations.Name, "only .hea and .edf hold annotations", "Leave it out or name OUT so");
        }

        if (Path.GetFullPath(order.From) == Path.GetFullPath(to) || Path.ChangeExtension(Path.GetFullPath(order.From), null) == Path.ChangeExtension(Path.GetFullPath(to), null) && RecordingFile.FormatOf(order.From) == RecordingFormat.Wfdb && RecordingFile.FormatOf(to) == RecordingFormat.Wfdb)
        {
            throw new BadInputException(to, "expected another file than the one to read", "Give OUT another name");
        }

        var source = new ConversionSource(order, _surroundings.Input);
        try
        {
            Write(source, order, cancel);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException)
        {
            throw new BadInputException(to, $"it could not be written ({e.Message.TrimEnd('.')})", "Give another place, or free space and rights", e);
        }

        if (cancel.IsCancellationRequested)
        {
            return ExitStatus.Cancelled;
        }

        using var text = new StreamWriter(_results, leaveOpen: true);
        text.WriteLine(to);
        return ExitStatus.Done;
    }

    private static void Write(ConversionSource source, ConvertOrder order, CancellationToken cancel)
    {
        if (Path.GetExtension(order.To).Equals(".json", StringComparison.OrdinalIgnoreCase))
        {
            FhirFile.Write(source, order, cancel);
            return;
        }

        switch (RecordingFile.FormatOf(order.To))
        {
            case RecordingFormat.Csv:
                ConvertedFiles.WriteCsv(source, order, cancel);
                break;
            case RecordingFormat.Wfdb:
                ConvertedFiles.WriteWfdb(source, order, cancel);
                break;
            case RecordingFormat.Edf:
                ConvertedFiles.WriteEdf(source, order, cancel);
                break;
            case RecordingFormat.Parquet:
                ConvertedFiles.WriteParquet(source, order, cancel);
                break;
            default:
                throw new BadInputException(order.To, "expected a name that ends in .csv, .hea, .edf, .parquet or .json", "Name the format so and run again");
        }
    }
}
