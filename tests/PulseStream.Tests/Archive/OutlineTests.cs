using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using CsCheck;
using PulseStream.Archive;
using PulseStream.Archive.Columns;
using PulseStream.Archive.Sealing;
using PulseStream.Samples;
using Xunit;

namespace PulseStream.Tests.Archive;

public sealed partial class OutlineTests
{
    [Fact]
    public void ItSaysWhatTheFilesSay()
    {
        using var archive = new TemporaryArchive();
        var session = ArchivedSession.Open(Sessions.Write(archive.Folder, [Sessions.WholeCounts(0, 300)]));

        Same(session, session.Outline());
    }

    [Fact]
    public void ASessionOfAnEarlierVersionIsReadFromItsFiles()
    {
        using var archive = new TemporaryArchive();
        var folder = Sessions.Write(archive.Folder, [Sessions.WholeCounts(0, 300)]);
        var file = Path.Combine(folder, "session.json");
        var text = File.ReadAllText(file);
        var without = Seal().Replace(Outline().Replace(text, ""), $"\"seal\": \"{new string('0', 64)}\"");
        File.WriteAllText(file, without.Replace(new string('0', 64), Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(without))), StringComparison.Ordinal));

        var session = ArchivedSession.Open(folder);

        Assert.Contains("\"outline\"", text, StringComparison.Ordinal);
        Assert.DoesNotContain("\"outline\"", File.ReadAllText(file), StringComparison.Ordinal);
        Same(session, session.Outline());
    }

    [Theory]
    [InlineData("readings.parquet")]
    [InlineData("sittings.parquet")]
    [InlineData("advice.parquet")]
    public void WhatItRepeatsIsNotBelievedOnceItsFileWasChanged(string name)
    {
        using var archive = new TemporaryArchive();
        var folder = Sessions.Write(archive.Folder, [Sessions.WholeCounts(0, 300)]);
        var bytes = File.ReadAllBytes(Path.Combine(folder, name));
        bytes[^20] ^= 1;
        File.WriteAllBytes(Path.Combine(folder, name), bytes);

        Assert.Contains(name, Assert.Throws<BadInputException>(() => ArchivedSession.Open(folder).Outline()).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ANightHasNone()
    {
        using var archive = new TemporaryArchive();
        using var writer = Sessions.Begin(archive.Folder);
        writer.Append(Sessions.WholeCounts(0, 300));
        for (var i = 0; i < 201; i++)
        {
            writer.Append(Sessions.SomeReadings[0] with { SecondIndex = i });
        }

        writer.Seal(new(300, 0, 0, 0));

        Assert.DoesNotContain("\"outline\": {", File.ReadAllText(Path.Combine(writer.Folder, "session.json")), StringComparison.Ordinal);
        Assert.Equal(201, ArchivedSession.Open(writer.Folder).Outline().Readings.Count);
    }

    [Fact]
    public void ARowReadsBackAsItWas() => Gen.Select(Gen.Double, Gen.Long[-1_000_000, 1_000_000], Gen.Bool, Gen.String["abc -"]).Sample((number, whole, isKnown, text) =>
    {
        Cell[] row = [number, isKnown ? whole : double.NaN, text];
        var back = RowText.Cells(RowText.Of(row), [CellKind.Decimal, CellKind.Whole, CellKind.Text]);
        return back.Zip(row).All(pair => pair.First.Number.Equals(pair.Second.Number) && (pair.First.Text ?? "") == (pair.Second.Text ?? ""));
    });

    private static void Same(ArchivedSession session, SessionOutline outline)
    {
        Assert.Equal(session.Readings(), outline.Readings);
        Assert.Equal(session.Sittings(), outline.Sittings);
        Assert.Equal(session.Advice().Select(advice => new OutlinedAdvice(advice.Second, advice.Level, advice.RecheckAfterMinutes)), outline.Advice);
        Assert.NotEmpty(outline.Readings);
        Assert.NotEmpty(outline.Sittings);
        Assert.NotEmpty(outline.Advice);
    }

    [GeneratedRegex(@"  ""outline"": \{.*?\n  \},\n", RegexOptions.Singleline | RegexOptions.CultureInvariant, 1000)]
    private static partial Regex Outline();

    [GeneratedRegex(@"""seal"": ""[0-9a-f]{64}""", RegexOptions.CultureInvariant, 1000)]
    private static partial Regex Seal();
}
