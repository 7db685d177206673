using System.Text.Json;
using Xunit;

namespace PulseStream.Tests.Cli;

/// <summary>The fields of every kind of line, in their order, with their types: n number, s text, b truth, a list, ? may be null.</summary>
public sealed class NdjsonTests
{
    private static readonly Dictionary<string, string[]> Fields = new(StringComparer.Ordinal)
    {
        ["session"] = ["source s", "sampleRateHz n", "columns a", "curve s", "policy s", "version s", "curveHash s", "policyHash s"],
        ["second"] = ["second n", "usable b", "spo2 n?", "spo2Low n?", "spo2High n?", "pulse n?", "perfusion n?", "reasons a"],
        ["beat"] = ["time n", "interval n?", "ratio n?", "quality n"],
        ["reading"] = ["second n", "spo2 n", "spo2Low n", "spo2High n", "pulse n?", "perfusion n?", "heldSeconds n"],
        ["sitting"] = ["from n", "to n", "outcome s", "spo2 n?", "pulse n?", "readings n", "reasons a"],
        ["advice"] = ["second n?", "level s", "text s", "recheckAfterMinutes n?", "because a", "policy s"],
        ["end"] = ["samples n", "missing n", "refusedRows n", "seconds n", "usableSeconds n", "readings n"],
    };

    private static readonly ProgramRun Run = ProgramRun.Of("replay", Recordings.SlowFall, "--format", "ndjson", "--beats");

    [Fact]
    public void EveryKindHasItsFields()
    {
        foreach (var line in Run.Lines)
        {
            HasItsFields(JsonDocument.Parse(line).RootElement);
        }

        Assert.Equal(Fields.Keys.Order(StringComparer.Ordinal), Run.Lines.Select(KindOf).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal), StringComparer.Ordinal);
    }

    [Fact]
    public void AdviceHasTheSameFieldsWithoutASession()
    {
        var run = ProgramRun.Of("advise", "--spo2", "93", "--pulse", "72", "--format", "ndjson");

        HasItsFields(JsonDocument.Parse(Assert.Single(run.Lines)).RootElement);
        var advice = Assert.Single(run.Objects("advice"));
        Assert.Equal("recheck", advice.GetProperty("level").GetString());
        Assert.Equal(60, advice.GetProperty("recheckAfterMinutes").GetInt32());
    }

    [Fact]
    public void LinesComeInTheOrderOfTheirTime()
    {
        var kinds = Run.Lines.Select(KindOf).ToArray();

        Assert.Equal("session", kinds[0]);
        Assert.Equal("end", kinds[^1]);
        Assert.Equal(["sitting", "advice", "end"], kinds[^3..]);
        Assert.All(Indices(kinds, "reading"), at => Assert.Equal("second", kinds[at - 1]));
        Assert.Equal(Enumerable.Range(0, 90), Run.Objects("second").Select(line => line.GetProperty("second").GetInt32()));
    }

    [Fact]
    public void BeatsAreToldOnlyWhenAskedFor() =>
        Assert.Empty(ProgramRun.Of("replay", Recordings.WarmFinger, "--format", "ndjson").Objects("beat"));

    [Fact]
    public void ARefusedSecondHasReasonsAndNoValues()
    {
        var refused = Run.Objects("second").Where(line => !line.GetProperty("usable").GetBoolean()).ToArray();

        Assert.NotEmpty(refused);
        Assert.All(refused, line =>
        {
            Assert.Equal(JsonValueKind.Null, line.GetProperty("spo2").ValueKind);
            Assert.Equal(JsonValueKind.Null, line.GetProperty("pulse").ValueKind);
            Assert.NotEqual(0, line.GetProperty("reasons").GetArrayLength());
        });
    }

    [Fact]
    public void ARecordingOfInfraredAloneHasNoSaturation()
    {
        using var folder = new TemporaryFolder();
        var rows = File.ReadLines(Recordings.WarmFinger).Select(row => row.Split(',')).Select(row => $"{row[0]},{row[1]},{row[3]}");
        var path = folder.Write("infrared.csv", string.Join('\n', rows) + "\n");

        var run = ProgramRun.Of("replay", path, "--format", "ndjson");

        Assert.Equal(0, run.Status);
        Assert.Empty(run.Objects("reading"));
        Assert.Contains(run.Objects("second"), line => line.GetProperty("usable").GetBoolean());
        Assert.All(run.Objects("second"), line => Assert.Equal(JsonValueKind.Null, line.GetProperty("spo2").ValueKind));
    }

    private static void HasItsFields(JsonElement line)
    {
        var expected = Fields[line.GetProperty("kind").GetString()!];
        var found = line.EnumerateObject().Skip(1).ToArray();
        Assert.Equal(expected.Select(field => field.Split(' ')[0]), found.Select(field => field.Name), StringComparer.Ordinal);
        foreach (var (field, value) in expected.Zip(found))
        {
            var type = field.Split(' ')[1];
            Assert.True(type.EndsWith('?') && value.Value.ValueKind == JsonValueKind.Null || TypeOf(value.Value) == type[0], $"{line}: {value.Name}");
        }
    }

    private static char TypeOf(JsonElement value) => value.ValueKind switch
    {
        JsonValueKind.Number => 'n',
        JsonValueKind.String => 's',
        JsonValueKind.True or JsonValueKind.False => 'b',
        JsonValueKind.Array => 'a',
        _ => '-',
    };

    private static string KindOf(string line) => JsonDocument.Parse(line).RootElement.GetProperty("kind").GetString()!;

    private static IEnumerable<int> Indices(string[] kinds, string kind) => Enumerable.Range(0, kinds.Length).Where(at => kinds[at] == kind);
}
