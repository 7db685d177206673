using System.Text;
using CsCheck;
using PulseStream.Samples;
using PulseStream.Sources.Csv;
using Xunit;

namespace PulseStream.Tests.Sources;

public sealed class CsvBadFileTests
{
    private const string Good = "sample,time_s,red,infrared\n0,0.00,1,2\n1,0.01,1,2\n2,0.02,1,2\n";

    // What rows are made of, the ends of fields and lines often, so that random bytes reach every branch.
    private static readonly byte[] Bytes = [.. "0123456789,,,..--e\n\n\r \0"u8, 0xFF];
    private static readonly string[] Headers = ["infrared\n", "sample,infrared\n", "time_s,pleth\n", "sample,time_s,infrared,x\n"];

    [Theory]
    [InlineData("", "it is empty")]
    [InlineData("infrared\n", "a header and no rows")]
    [InlineData("time_s,infrared\n", "a header and no rows")]
    [InlineData("infrared\nx\ny\n", "not one good row: 2 not a number from line 2 on")]
    [InlineData("sample,red\n0,1\n", "line 1: no column 'infrared' or 'pleth', found 'sample,red'")]
    [InlineData("sample;infrared\n0;1\n", "Separate the columns with commas")]
    [InlineData("infrared,INFRARED\n0,1\n", "line 1: column 'INFRARED' stands there twice")]
    [InlineData("infrared\r1\r2\r", "lone CR")]
    [InlineData("infra\0red\n1\n", "zero bytes")]
    public void AFileThatIsNoRecordingIsOneSentence(string text, string words)
    {
        var sentence = CsvReading.Of(text, 100).Sentence;
        Assert.Contains(words, sentence, StringComparison.Ordinal);
        Assert.StartsWith("night.csv", sentence, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', sentence);
    }

    [Theory]
    [InlineData(false, false)]
    [InlineData(false, true)]
    [InlineData(true, false)]
    [InlineData(true, true)]
    public void Utf16IsCalledByItsName(bool bigEndian, bool mark)
    {
        var encoding = new UnicodeEncoding(bigEndian, mark);
        Assert.Contains("found UTF-16. Save the recording as UTF-8", CsvReading.Of([.. encoding.GetPreamble(), .. encoding.GetBytes(Good)]).Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void ZeroBytesWithoutEndAreRefusedAfterOneLineLength()
    {
        var zeros = new CutStream(new byte[100_000_000], [65_536]) { BeforeRead = at => Assert.True(at < 200_000) };
        Assert.Contains("no line end within", CsvReading.Of(zeros, 100, CancellationToken.None).Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void AStretchOfZeroBytesAfterACrashIsOneBadRow()
    {
        var rows = string.Concat(Enumerable.Repeat("5\n", 30));
        var reading = CsvReading.Of("infrared\n" + rows + new string('\0', 1_000_000) + "\n" + rows, 100);
        Assert.Equal((60, 1, 1), (reading.Tally.Samples, reading.Tally.Missing, reading.Tally.RefusedRows));
        Assert.Contains("line 32: row refused, line too long", reading.Said[0], StringComparison.Ordinal);
    }

    [Fact]
    public void ALineWithoutEndAfterGoodRowsEndsInASentenceAndKeepsTheRows()
    {
        var reading = CsvReading.Of([.. Encoding.UTF8.GetBytes(Good), .. new byte[70_000_000]]);
        Assert.Contains("line 5: no line end within", reading.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void ABrokenPipeIsASentence()
    {
        var broken = new CutStream(Encoding.UTF8.GetBytes("infrared\n1\n"), [5]) { BeforeRead = at => { if (at == 10) { throw new IOException("Cable pulled."); } } };
        Assert.Equal("night.csv: it could not be read (Cable pulled). Check the path and the medium and run again.", CsvReading.Of(broken, 100, CancellationToken.None).Sentence);
    }

    [Theory]
    [InlineData("/", "expected a file and found a folder")]
    [InlineData("/nowhere/night.csv", "there is no such file")]
    [InlineData("", "it could not be read")]
    public void APathThatIsNoFileIsASentence(string path, string words) =>
        Assert.Contains(words, Assert.Throws<BadInputException>(() => CsvRecording.Open(path, new CsvOptions(100), TestContext.Current.CancellationToken)).Message, StringComparison.Ordinal);

    [Fact]
    public void AnyBytesGiveAResultOrASentence() =>
        Gen.OneOf(
            Gen.Byte.Array[0, 300],
            Gen.Select(Gen.Int[0, Headers.Length - 1], Gen.Int[0, Bytes.Length - 1].Array[0, 400], (header, bytes) =>
                (byte[])[.. Encoding.UTF8.GetBytes(Headers[header]), .. bytes.Select(at => Bytes[at])]),
            Gen.Select(Gen.Int[0, Good.Length - 1], Gen.Byte, (at, value) => Encoding.UTF8.GetBytes(Good).Select((old, place) => place == at ? value : old).ToArray()))
        .Sample(
            bytes =>
            {
                var reading = CsvReading.Of(bytes, 100);
                var indices = reading.Indices;
                return (reading.Failure is BadInputException) != reading.Completed
                    && reading.Said.Append(reading.Failure?.Message ?? "").All(line => !line.Any(char.IsControl))
                    && indices.Zip(indices.Skip(1)).All(pair => pair.First < pair.Second)
                    && indices.All(index => index >= 0);
            },
            iter: 20_000);
}
