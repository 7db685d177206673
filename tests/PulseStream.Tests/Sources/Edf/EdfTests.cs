using System.Text;
using PulseStream.Sources.Edf;
using PulseStream.Tests.Cli;
using Xunit;

namespace PulseStream.Tests.Sources.Edf;

public sealed class EdfTests
{
    // Lists of the EDF+ specification (Kemp and Olivan 2003), and one with a leading zero that readers have to bear.
    [Theory]
    [InlineData("+180\u0014Lights off\u0014Close door\u0014\0", 180, null, "Lights off|Close door")]
    [InlineData("+1800.2\u001525.5\u0014Apnea\u0014\0", 1800.2, 25.5, "Apnea")]
    [InlineData("+567\u0014\u0014\0", 567, null, "")]
    [InlineData("+3456.789\u0014\u0014R-wave\u0014\0", 3456.789, null, "R-wave")]
    [InlineData("+3.14\u001504.20\u0014nothing\u0014\0", 3.14, 4.2, "nothing")]
    public void AnnotationListsAreRead(string list, double onset, double? duration, string texts)
    {
        var found = Assert.Single(EdfAnnotationLists.Read(Encoding.UTF8.GetBytes(list)));

        Assert.Equal((onset, duration, texts), (found.OnsetSeconds, found.DurationSeconds, string.Join('|', found.Texts)));
    }

    [Theory]
    [InlineData("180\u0014no sign\u0014\0")]
    [InlineData("+\u0014no number\u0014\0")]
    [InlineData("+1")]
    [InlineData("\0\0\0")]
    public void WhatIsNoListIsPassedOver(string list) => Assert.Empty(EdfAnnotationLists.Read(Encoding.UTF8.GetBytes(list)));

    [Fact]
    public void BytesOfTheExampleAreWritten() => Assert.Equal(
        Convert.FromHexString("2B313830302E321532352E351441706E65611400"),
        EdfAnnotationLists.Write(new EdfAnnotation(1800.2, 25.5, ["Apnea"])));

    // Limits and first samples of a public test file of another library: physical 8711 to -8711, digital -32768 to 32767.
    [Theory]
    [InlineData(-24, 6.247303)]
    [InlineData(-29, 7.576516)]
    [InlineData(-39, 10.234943)]
    [InlineData(-38, 9.9691)]
    public void ANegativeGainIsAGain(short digital, double physical) =>
        Assert.Equal(physical, new EdfSignal("Fp1", "uV", 8711, -8711, -32768, 32767, 128).PhysicalOf(digital), 6);

    [Fact]
    public void RecordsThatLieApartLeaveAGap()
    {
        using var folder = new TemporaryFolder();
        System.IO.File.WriteAllBytes(folder["r.edf"], File("EDF+D", [(0, [1, 2]), (3, [3, 4])]));

        var (recording, samples, _) = FileReading.Of(folder["r.edf"]);

        Assert.Equal(50, recording.Header.Rate.Hz);
        Assert.Equal([(0, 1.0), (1, 2.0), (150, 3.0), (151, 4.0)], samples.Where(s => s.Sample.Pleth > 0).Select(s => (s.Index, s.Sample.Pleth)));
        Assert.Equal(100, recording.Tally.Missing);
    }

    [Theory]
    [InlineData(0, "1", "version")]
    [InlineData(184, "600", "header bytes")]
    [InlineData(236, "many", "number of data records")]
    [InlineData(252, "0", "signals")]
    public void ABrokenHeaderIsOneSentenceWithItsByte(int at, string field, string says)
    {
        using var folder = new TemporaryFolder();
        var bytes = File("EDF+C", [(0, [1, 2])]);
        Encoding.ASCII.GetBytes(field.PadRight(4)).CopyTo(bytes, at);
        System.IO.File.WriteAllBytes(folder["r.edf"], bytes);

        var run = ProgramRun.Of("replay", folder["r.edf"]);

        run.IsRefused();
        Assert.Contains(says, run.Error, StringComparison.Ordinal);
        Assert.Contains("r.edf, byte", run.Error, StringComparison.Ordinal);
    }

    // Two signals, 50 samples of pleth and 16 of annotations a record of one second; the rest of each record is 0.
    private static byte[] File(string kind, (int Onset, short[] Values)[] records)
    {
        var text = new StringBuilder();
        void Add(int length, params string[] fields) => text.Append(string.Concat(fields.Select(field => field.PadRight(length))));
        Add(8, "0");
        Add(80, "X X X X", "Startdate X X X X");
        Add(8, "01.03.26", "07.30.00", "768");
        Add(44, kind);
        Add(8, $"{records.Length}", "1");
        Add(4, "2");
        Add(16, "Pleth", "EDF Annotations");
        Add(80, "", "");
        Add(8, "NU", "", "-100", "-1", "100", "1", "-100", "-32768", "100", "32767");
        Add(80, "", "");
        Add(8, "50", "16");
        Add(32, "", "");
        var bytes = new List<byte>(Encoding.ASCII.GetBytes(text.ToString()));
        foreach (var (onset, values) in records)
        {
            var record = new byte[2 * 66];
            Buffer.BlockCopy(values, 0, record, 0, 2 * values.Length);
            EdfAnnotationLists.Write(new EdfAnnotation(onset, null, [])).CopyTo(record, 100);
            bytes.AddRange(record);
        }

        return [.. bytes];
    }
}
