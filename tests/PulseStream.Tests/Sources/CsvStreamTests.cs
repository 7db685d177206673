using System.Text;
using CsCheck;
using PulseStream.Samples;
using PulseStream.Sources.Csv;
using Xunit;

namespace PulseStream.Tests.Sources;

public sealed class CsvStreamTests
{
    // A block is a quarter of a second at most.
    private const int SamplesABlock = 25;

    // Longer than any line that is read.
    private const int LongLine = 70_000;

    [Fact]
    public void AnyCutOfTheStreamGivesTheSameBlocks()
    {
        var rows = Enumerable.Range(0, 700).Where(at => at % 97 != 5).Select(at => at == 50 ? "zzz\r\n" : $"{at},{at / 100.0},{at * 3.25},{at}\r\n");
        var bytes = Encoding.UTF8.GetBytes("\uFEFFsample,time_s,red,infrared\r\n" + string.Concat(rows) + new string('9', LongLine) + "\n700,7,1,2");
        var whole = CsvReading.Of(bytes);
        Assert.Equal(692, whole.Tally.Samples);
        Gen.Int[1, 5000].Array[1, 8].Sample(
            cuts =>
            {
                var cut = CsvReading.Of(new CutStream(bytes, cuts), null, CancellationToken.None);
                return cut.Header == whole.Header && cut.Tally == whole.Tally && cut.Samples.SequenceEqual(whole.Samples)
                    && cut.Said.SequenceEqual(whole.Said, StringComparer.Ordinal);
            },
            iter: 50);
    }

    [Fact]
    public void ASlowPipeIsHandedOnAQuarterSecondAtATime()
    {
        List<SampleBlock> blocks = [];
        var rows = string.Concat(Enumerable.Repeat("5\n", 400));
        var pipe = new CutStream(Encoding.UTF8.GetBytes("infrared\n" + rows), [9, 2, 2, 2, 2, 2])
        {
            // Two bytes a row after the header of nine: all but the block under way, and the row that waits, has been pushed.
            BeforeRead = at => Assert.True(blocks.Sum(block => block.Samples.Length) + SamplesABlock + 1 >= (at - 9) / 2),
        };
        using var recording = CsvRecording.Open(pipe, "pipe", new CsvOptions(100), TestContext.Current.CancellationToken);
        recording.Blocks(CancellationToken.None).Subscribe(blocks.Add);
        Assert.Equal(400, blocks.Sum(block => block.Samples.Length));
        Assert.All(blocks, block => Assert.True(block.Samples.Length <= SamplesABlock));
    }

    [Fact]
    public void CancellingCompletesWithEveryWholeRowReceived()
    {
        using var cancel = new CancellationTokenSource();
        var pipe = new CutStream(Encoding.UTF8.GetBytes("infrared\n" + string.Concat(Enumerable.Repeat("15\n", 400))), [100])
        {
            BeforeRead = at => { if (at == 300) { cancel.Cancel(); } },
        };
        var reading = CsvReading.Of(pipe, 100, cancel.Token);
        Assert.True(reading.Completed);
        Assert.Equal((300 - 9) / 3, reading.Samples.Count());
    }

    [Fact]
    public void CancellingEndsTheWaitForASilentPipe()
    {
        using var cancel = new CancellationTokenSource();
        using var silent = new ManualResetEventSlim();
        var pipe = new CutStream("infrared\n5\n6\n"u8.ToArray(), [13])
        {
            BeforeRead = at => { if (at == 13) { cancel.Cancel(); silent.Wait(TimeSpan.FromMinutes(1)); } },
        };
        var reading = CsvReading.Of(pipe, 100, cancel.Token);
        silent.Set();
        Assert.True(reading.Completed);
        Assert.Equal(2, reading.Samples.Count());
    }

    [Fact]
    public void ARecordingIsReadOnce()
    {
        using var recording = CsvRecording.Open(new MemoryStream("infrared\n5\n"u8.ToArray()), "x", new CsvOptions(100), TestContext.Current.CancellationToken);
        recording.Blocks(CancellationToken.None).Subscribe(_ => { });
        Assert.Throws<InvalidOperationException>(() => recording.Blocks(CancellationToken.None).Subscribe(_ => { }));
    }

    [Fact]
    public void ARowCostsNoMemoryBeyondItsSample()
    {
        var rows = 200_000;
        var bytes = Encoding.UTF8.GetBytes("sample,red,infrared\n" + string.Concat(Enumerable.Range(0, rows).Select(at => $"{at},{at}.5,7\n")));
        using var recording = CsvRecording.Open(new MemoryStream(bytes), "x", new CsvOptions(100), TestContext.Current.CancellationToken);
        var before = GC.GetAllocatedBytesForCurrentThread();
        recording.Blocks(CancellationToken.None).Subscribe(_ => { });

        // A sample has 56 bytes, and each block of 25 a few objects around them.
        const int BytesARow = 64;
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, (long)rows * BytesARow);
    }
}
