using PulseStream.Archive;
using PulseStream.Archive.Columns;
using PulseStream.Samples;
using Xunit;

namespace PulseStream.Tests.Archive;

public sealed class DamageTests
{
    [Theory]
    [InlineData("samples.parquet")]
    [InlineData("readings.parquet")]
    [InlineData("session.json")]
    public void AFlippedBitOfASessionIsASentence(string name)
    {
        using var archive = new TemporaryArchive();
        var path = Path.Combine(Sessions.Write(archive.Folder, [Sessions.WholeCounts(0, 3000)]), name);
        var whole = File.ReadAllBytes(path);
        var random = new Random(7);
        for (var i = 0; i < 100; i++)
        {
            File.WriteAllBytes(path, Flipped(whole, random));
            var e = Assert.Throws<BadInputException>(() => ArchivedSession.Open(path).Verify());
            Assert.Contains(Path.GetFileName(path), e.Message, StringComparison.Ordinal);
        }
    }

    // The file alone, without the hash of the whole in session.json: the hash of each column chunk must do.
    [Fact]
    public void NoneOf300FlippedBitsOfAParquetFileGivesAnotherNumberInSilence()
    {
        using var archive = new TemporaryArchive();
        var path = Path.Combine(Sessions.Write(archive.Folder, [Sessions.WholeCounts(0, 70_000)]), "samples.parquet");
        var whole = File.ReadAllBytes(path);
        var expected = Content(path);
        var random = new Random(3);
        var detected = 0;
        for (var i = 0; i < 300; i++)
        {
            File.WriteAllBytes(path, Flipped(whole, random));
            try
            {
                Assert.Equal(expected, Content(path));
            }
            catch (BadInputException)
            {
                detected++;
            }
        }

        // The rest fell on bytes that no reader needs.
        Assert.InRange(detected, 270, 300);
    }

    [Fact]
    public void AFlippedBitOfTheFooterIsDetectedOrHarmless()
    {
        using var archive = new TemporaryArchive();
        var path = Path.Combine(Sessions.Write(archive.Folder, [Sessions.WholeCounts(0, 3000)]), "samples.parquet");
        var whole = File.ReadAllBytes(path);
        var expected = Content(path);
        var footer = whole.Length - 8 - BitConverter.ToInt32(whole, whole.Length - 8);
        var random = new Random(4);
        for (var i = 0; i < 300; i++)
        {
            File.WriteAllBytes(path, Flipped(whole, random, footer));
            try
            {
                Assert.Equal(expected, Content(path));
            }
            catch (BadInputException)
            {
                // Detected.
            }
        }
    }

    [Fact]
    public void ATruncatedFileIsASentenceWhereverItEnds()
    {
        using var archive = new TemporaryArchive();
        var path = Path.Combine(Sessions.Write(archive.Folder, [Sessions.WholeCounts(0, 3000)]), "samples.parquet");
        var whole = File.ReadAllBytes(path);
        foreach (var length in Enumerable.Range(0, 40).Select(i => whole.Length * i / 40).Append(whole.Length - 1))
        {
            File.WriteAllBytes(path, whole[..length]);
            Assert.Throws<BadInputException>(() => ArchivedRecording.Open(path));
            Assert.Throws<BadInputException>(() => Content(path));
        }
    }

    [Fact]
    public void AFolderThatIsNoSessionIsASentence()
    {
        using var archive = new TemporaryArchive();
        Assert.Throws<BadInputException>(() => ArchivedSession.Open(archive.Folder));
        File.WriteAllText(Path.Combine(archive.Folder, "session.json"), "null");
        Assert.Throws<BadInputException>(() => ArchivedSession.Open(archive.Folder));
        File.WriteAllText(Path.Combine(archive.Folder, "session.json"), "{}");
        Assert.Throws<BadInputException>(() => ArchivedSession.Open(archive.Folder));
    }

    [Fact]
    public void AMissingFileIsASentence()
    {
        using var archive = new TemporaryArchive();
        var folder = Sessions.Write(archive.Folder, [Sessions.WholeCounts(0, 300)]);
        File.Delete(Path.Combine(folder, "beats.parquet"));

        Assert.Throws<BadInputException>(() => ArchivedSession.Open(folder).Beats().ToList());
    }

    private static byte[] Flipped(byte[] whole, Random random, int from = 0)
    {
        var bytes = whole.ToArray();
        bytes[random.Next(from, bytes.Length)] ^= (byte)(1 << random.Next(8));
        return bytes;
    }

    private static string Content(string path)
    {
        using var reader = new ColumnFileReader(path);
        var index = new SampleColumn<long>("sample", isDeltaPacked: true);
        var red = new SampleColumn<int>("red", isDeltaPacked: true);
        var infrared = new SampleColumn<int>("infrared", isDeltaPacked: true);
        var content = new HashCode();
        for (var group = 0; group < reader.GroupCount; group++)
        {
            reader.ReadGroup(group, [index, red, infrared]);
            content.Add(index.Count);
            content.AddBytes(System.Runtime.InteropServices.MemoryMarshal.AsBytes(index.Values));
            content.AddBytes(System.Runtime.InteropServices.MemoryMarshal.AsBytes(red.Values));
            content.AddBytes(System.Runtime.InteropServices.MemoryMarshal.AsBytes(infrared.Values));
        }

        return content.ToHashCode().ToString();
    }
}
