using Hl7.Fhir.Model;
using Hl7.Fhir.Serialization;
using Xunit;

namespace PulseStream.Tests.Cli;

public sealed class ConvertCommandTests
{
    [Theory]
    [InlineData("warm.hea")]
    [InlineData("warm.edf")]
    public void AConvertedRecordingGivesTheSameResults(string name)
    {
        using var folder = new TemporaryFolder();
        var converted = ProgramRun.Of("convert", Recordings.WarmFinger, folder[name], "--quiet");

        Assert.Equal((0, folder[name], ""), (converted.Status, Assert.Single(converted.Lines), converted.Error));
        Assert.Equal(ResultsOf(Recordings.WarmFinger), ResultsOf(folder[name]));
    }

    [Fact]
    public void AGapStaysAGapOnTheWayThroughEveryFormat()
    {
        using var folder = new TemporaryFolder();
        ProgramRun.Of("simulate", folder["gap.csv"], "--episode", "gap:20-23", "--seconds", "40", "--quiet");
        ProgramRun.Of("convert", folder["gap.csv"], folder["gap.edf"]);
        ProgramRun.Of("convert", folder["gap.edf"], folder["gap2.hea"]);
        ProgramRun.Of("convert", folder["gap2.hea"], folder["back.csv"]);

        Assert.Equal(File.ReadAllText(folder["gap.csv"]), File.ReadAllText(folder["back.csv"]));
    }

    [Fact]
    public void ASessionBecomesABundleThatTheLibraryReadsBack()
    {
        using var folder = new TemporaryFolder();
        ProgramRun.Of("replay", Recordings.WarmFinger, "--archive", folder["archive"], "--person", "hut-07", "--start", "2026-03-01T07:30:00+01:00");
        var run = ProgramRun.Of("convert", folder["archive"], folder["warm.json"]);

        Assert.Equal(0, run.Status);
        var bundle = new FhirJsonDeserializer().Deserialize<Bundle>(File.ReadAllText(folder["warm.json"]));
        var observations = bundle.Entry.Select(entry => (Observation)entry.Resource!).ToList();
        var oxygen = observations.Where(o => o.Code!.Coding.Any(c => c.Code == "59408-5")).ToList();
        Assert.Equal(ProgramRun.Of("replay", Recordings.WarmFinger, "--format", "ndjson").Objects("reading").Count(), oxygen.Count);
        Assert.All(oxygen, o =>
        {
            Assert.Equal(("%", "http://unitsofmeasure.org"), (((Quantity)o.Value!).Code, ((Quantity)o.Value).System));
            Assert.Contains(o.Code!.Coding, c => c.Code == "2708-6" && c.System == "http://loinc.org");
            Assert.Equal("vital-signs", o.Category[0].Coding[0].Code);
            Assert.Equal("hut-07", o.Subject!.Identifier!.Value);
            Assert.StartsWith("2026-03-01T07:30:", ((FhirDateTime)o.Effective!).Value, StringComparison.Ordinal);
            Assert.EndsWith("+01:00", ((FhirDateTime)o.Effective).Value, StringComparison.Ordinal);
        });
        Assert.Contains(observations, o => o.Code!.Coding.Any(c => c.Code == "8867-4") && ((Quantity)o.Value!).Code == "/min");
    }

    [Fact]
    public void ASittingWithoutAReadingIsAnObservationWithoutAValue()
    {
        using var folder = new TemporaryFolder();
        ProgramRun.Of("simulate", folder["fidget.csv"], "--seconds", "40", "--episode", "motion:0-40:size=8", "--quiet");
        ProgramRun.Of("convert", folder["fidget.csv"], folder["fidget.json"], "--start", "2026-03-01T07:30:00+01:00");

        var bundle = new FhirJsonDeserializer().Deserialize<Bundle>(File.ReadAllText(folder["fidget.json"]));

        var observation = (Observation)Assert.Single(bundle.Entry).Resource!;
        Assert.Null(observation.Value);
        Assert.Equal("error", observation.DataAbsentReason!.Coding[0].Code);
        Assert.NotEmpty(observation.Component);
    }

    [Fact]
    public void WhatCannotBeConvertedIsOneSentence()
    {
        using var folder = new TemporaryFolder();

        ProgramRun.Of("convert", Recordings.WarmFinger, folder["warm.docx"]).IsRefused();
        ProgramRun.Of("convert", folder["none.csv"], folder["none.edf"]).IsRefused();
        ProgramRun.Of("convert", Recordings.WarmFinger, Recordings.WarmFinger).IsRefused();
        ProgramRun.Of("convert", Recordings.WarmFinger, folder["warm.json"], "--quiet").IsRefused();
        ProgramRun.Of("convert", Recordings.WarmFinger, folder["no/such/folder.csv"], "--quiet").IsRefused();
        Assert.Empty(Directory.GetFileSystemEntries(folder.Path));
    }

    private static string ResultsOf(string path) =>
        string.Join('\n', ProgramRun.Of("replay", path, "--format", "ndjson", "--beats", "--quiet").Lines[1..]);
}
