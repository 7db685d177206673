using PulseStream.Archive;
using PulseStream.Cli.Commands;
using PulseStream.Cli.Inputs;
using PulseStream.Fhir;
using PulseStream.Samples;

namespace PulseStream.Cli.Output;

/// <summary>Writes what a recording says as a FHIR bundle: what the archive kept, or what a run over it finds.</summary>
internal static class FhirFile
{
    public static void Write(ConversionSource source, ConvertOrder order, CancellationToken cancel)
    {
        using var opened = source.Open(cancel);
        var header = opened.Recording.Header;
        var start = order.Known.Start ?? header.Start ?? throw new BadInputException(
            header.Source, "when it began is not known, and an observation has to say when it was made", "Give --start with the offset, such as 2026-03-01T07:30:00+01:00");
        var found = RecordingFindings.Of(opened, cancel);
        var (readings, sittings) = (found.Readings, found.Sittings);
        var session = new MeasuredSession(
            opened.Session?.Identity.Session ?? SessionIdentity.SessionNameOf(header with { Start = start }),
            order.Person ?? opened.Session?.Identity.Person,
            start,
            $"PulseStream {opened.Session?.Settings.Version ?? ProgramVersion.Text}",
            readings,
            sittings);
        ConvertedFiles.Whole(order.To, part => File.WriteAllText(part, ObservationBundle.JsonOf(session)), cancel);
        order.Say($"{header.Source}: {readings.Count} readings, {sittings.Count(sitting => sitting.ReadingCount == 0)} sittings without one.");
    }
}
