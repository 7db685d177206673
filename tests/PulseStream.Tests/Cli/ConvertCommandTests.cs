using Hl7.Fhir.Model;
using Hl7.Fhir.Serialization;
using PulseStream.Sources.Edf;
using PulseStream.Tests.Sources.Wfdb;
using Xunit;

namespace PulseStream.Tests.Cli;

public sealed class ConvertCommandTests
{
    [Theory]
    [InlineData("warm.hea")]
    [InlineData("warm.edf")]
    [InlineData("warm.parquet")]
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
        ProgramRun.Of("convert", folder["gap2.hea"], folder["gap3.parquet"]);
        ProgramRun.Of("convert", folder["gap3.parquet"], folder["back.csv"]);

        Assert.Equal(File.ReadAllText(folder["gap.csv"]), File.ReadAllText(folder["back.csv"]));
    }

    [Fact]
    public void BeatsAndReadingsBecomeAnnotationsOfAWfdbRecord()
    {
        using var folder = new TemporaryFolder();
        ProgramRun.Of("convert", Recordings.WarmFinger, folder["warm.hea"], "--annotations", "--quiet");
        var results = ProgramRun.Of("replay", Recordings.WarmFinger, "--format", "ndjson", "--beats", "--quiet");
        var rate = results.Objects("session").Single().GetProperty("sampleRateHz").GetDouble();

        var annotations = MitAnnotations.Read(File.ReadAllBytes(folder["warm.pulse"]));

        Assert.Equal(results.Objects("beat").Select(beat => (long)Math.Round(beat.GetProperty("time").GetDouble() * rate)), annotations.Where(one => one.Kind == 1).Select(one => one.Index));
        Assert.Equal(results.Objects("reading").Select(reading => ((long)(reading.GetProperty("second").GetInt64() * rate), $"SpO2 {reading.GetProperty("spo2")} %")), annotations.Where(one => one.Kind == 22).Select(one => (one.Index, one.Text[..9])));
    }

    [Fact]
    public void AnArchivedSessionsReadingsBecomeAnnotationsOfEdf()
    {
        using var folder = new TemporaryFolder();
        var run = ProgramRun.Of("replay", Recordings.SlowFall, "--archive", folder["archive"], "--format", "ndjson");
        ProgramRun.Of("convert", folder["archive"], folder["fall.edf"], "--annotations", "--quiet");
        ProgramRun.Of("convert", folder["archive"], folder["bare.edf"], "--quiet");

        var found = EdfNotes(folder["fall.edf"]).ToList();

        Assert.NotEmpty(found);
        Assert.Equal(run.Objects("reading").Select(reading => ((double)reading.GetProperty("second").GetInt64(), $"SpO2 {reading.GetProperty("spo2")} %")), found.Select(note => (note.Seconds, note.Text[..9])));
        Assert.Empty(EdfNotes(folder["bare.edf"]));
        Assert.Equal(ResultsOf(folder["bare.edf"]), ResultsOf(folder["fall.edf"]));
    }

    [Fact]
    public void ColumnsOfCsvAreNamedLikeSignals()
    {
        using var folder = new TemporaryFolder();
        var lines = File.ReadAllLines(Recordings.WarmFinger);
        lines[0] = lines[0].Replace("infrared", "LED2", StringComparison.Ordinal).Replace("red", "LED1", StringComparison.Ordinal);
        var file = folder.Write("leds.csv", string.Join('\n', lines));

        string Lines(params string[] more) => string.Join('\n', ProgramRun.Of(["replay", file, "--format", "ndjson", "--quiet", .. more]).Lines.Skip(1));

        Assert.Equal(string.Join('\n', ProgramRun.Of("replay", Recordings.WarmFinger, "--format", "ndjson", "--quiet").Lines.Skip(1)), Lines("--map", "red=LED1,infrared=LED2"));
        ProgramRun.Of("replay", file, "--quiet").IsRefused();
        ProgramRun.Of("replay", file, "--map", "infrared=LED3", "--quiet").IsRefused();
        Assert.Equal(0, ProgramRun.Of("convert", file, folder["leds.hea"], "--map", "red=LED1,infrared=LED2", "--quiet").Status);
        Assert.Equal(Lines("--map", "red=LED1,infrared=LED2"), string.Join('\n', ProgramRun.Of("replay", folder["leds.hea"], "--format", "ndjson", "--quiet").Lines.Skip(1)));
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
        ProgramRun.Of("convert", Recordings.WarmFinger, folder["warm.csv"], "--annotations", "--quiet").IsRefused();
        ProgramRun.Of("replay", folder.Write("none.parquet", "PAR1 and nothing else PAR1")).IsRefused();
        File.Delete(folder["none.parquet"]);
        Assert.Empty(Directory.GetFileSystemEntries(folder.Path));
    }

    [Fact]
    public void DecimalsAndLightThatIsNotThereKeepTheirPlaceInParquet()
    {
        using var folder = new TemporaryFolder();
        var rows = Enumerable.Range(0, 200).Select(i => $"{i},{(i == 100 ? "" : $"{140000.25 + i}")},{150000 + i}");
        var file = folder.Write("odd.csv", "sample,red,infrared\n" + string.Join('\n', rows) + "\n");
        ProgramRun.Of("convert", file, folder["odd.parquet"], "--rate", "50", "--quiet");
        ProgramRun.Of("convert", folder["odd.parquet"], folder["back.csv"], "--quiet");
        ProgramRun.Of("convert", file, folder["direct.csv"], "--rate", "50", "--quiet");

        Assert.Equal(File.ReadAllText(folder["direct.csv"]), File.ReadAllText(folder["back.csv"]), StringComparer.Ordinal);
    }

    [Fact]
    public void AFingersReadingsAreNoSamples()
    {
        using var folder = new TemporaryFolder();
        ProgramRun.Of("replay", Recordings.PathOf("bench/device.csv"), "--readings", "--archive", folder["archive"], "--start", "2026-03-01T07:30:00+01:00", "--quiet");

        ProgramRun.Of("convert", folder["archive"], folder["device.csv"], "--quiet").IsRefused();
        Assert.Equal(0, ProgramRun.Of("convert", folder["archive"], folder["device.json"], "--quiet").Status);
        Assert.DoesNotContain("NaN", File.ReadAllText(folder["device.json"]), StringComparison.Ordinal);
    }

    private static IEnumerable<(double Seconds, string Text)> EdfNotes(string path)
    {
        using var stream = File.OpenRead(path);
        var header = EdfHeaderReader.Read(stream, path);
        var record = new byte[header.RecordBytes];
        var at = 2 * header.Signals.TakeWhile(signal => !signal.IsAnnotations).Sum(signal => signal.SamplesPerRecord);
        while (stream.ReadAtLeast(record, record.Length, throwOnEndOfStream: false) == record.Length)
        {
            foreach (var note in EdfAnnotationLists.Read(record.AsSpan(at)).Skip(1))
            {
                yield return (note.OnsetSeconds, Assert.Single(note.Texts));
            }
        }
    }

    private static string ResultsOf(string path) =>
        string.Join('\n', ProgramRun.Of("replay", path, "--format", "ndjson", "--beats", "--quiet").Lines[1..]);
}
