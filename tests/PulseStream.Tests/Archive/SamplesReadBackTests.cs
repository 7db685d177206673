using CsCheck;
using PulseStream.Archive;
using PulseStream.Samples;
using Xunit;

namespace PulseStream.Tests.Archive;

public sealed class SamplesReadBackTests
{
    private static readonly double[] AwkwardCounts = [-0.0, 0.5, double.MaxValue, double.Epsilon, 3e9, int.MinValue, int.MaxValue];

    private static readonly Gen<double> AnyCount = Gen.OneOf(
        Gen.Int[0, 262143].Select(i => (double)i),
        Gen.Int.Select(i => (double)i),
        Gen.Double,
        Gen.Int[0, AwkwardCounts.Length - 1].Select(i => AwkwardCounts[i]));

    private static readonly Gen<Sample> AnySample = Gen.Select(AnyCount, AnyCount, AnyCount, AnyCount, AnyCount, AnyCount, AnyCount)
        .Select((a, b, c, d, e, f, g) => new Sample(a, b, c, d, e, f, g));

    private static readonly Gen<Sample> AnyWholeSample = Gen.Int.Array[7]
        .Select(v => new Sample(v[0], v[1], v[2], v[3], v[4], v[5], v[6]));

    [Fact]
    public void WhatWasReceivedIsReadBackWhateverTheColumnsTheGapsAndTheBlocks() =>
        Gen.Select(Gen.Int[1, 31], Gen.OneOf(AnySample, AnyWholeSample).Array[1, 50].Array[1, 8], Gen.Int[0, 300].Array[8]).Sample(
            (columns, parts, gaps) =>
            {
                using var archive = new TemporaryArchive();
                var blocks = Blocks((SampleColumns)columns, parts, gaps);
                var folder = Sessions.Write(archive.Folder, blocks, Sessions.Header((SampleColumns)columns));
                return Sessions.ReadBack(folder).Select(Bits).SequenceEqual(blocks.SelectMany(Sessions.Indexed).Select(Bits));
            },
            iter: 60);

    [Fact]
    public void ALongSessionIsReadBackAcrossItsRowGroups()
    {
        using var archive = new TemporaryArchive();
        SampleBlock[] blocks = [Sessions.WholeCounts(0, 100_000), Sessions.WholeCounts(100_500, 61_234, seed: 2)];

        var folder = Sessions.Write(archive.Folder, blocks);

        Assert.Equal(blocks.SelectMany(Sessions.Indexed), Sessions.ReadBack(folder));
    }

    [Fact]
    public void TheRecordingKeepsItsNameItsHeaderAndItsTally()
    {
        using var archive = new TemporaryArchive();
        var header = Sessions.Header(SampleColumns.Infrared | SampleColumns.Acceleration, Sessions.Start, hz: 62.5);
        var folder = Sessions.Write(archive.Folder, [new(0, new Sample[] { new(double.NaN, 5, double.NaN, double.NaN, 1, 2, 3) })], header);

        using var recording = ArchivedRecording.Open(folder);
        recording.Blocks(CancellationToken.None).Subscribe(_ => { });

        Assert.Equal(header, recording.Header);
        Assert.Equal(header.Start!.Value.Offset, recording.Header.Start!.Value.Offset);
        Assert.Equal(new SampleTally(1, 7, 2, 1), recording.Tally);
    }

    [Fact]
    public void CancellingEndsTheStreamAsIfTheRecordingEndedThere()
    {
        using var archive = new TemporaryArchive();
        using var cancel = new CancellationTokenSource();
        using var recording = ArchivedRecording.Open(Sessions.Write(archive.Folder, [Sessions.WholeCounts(0, 1000)]));
        var received = 0;
        var isCompleted = false;

        recording.Blocks(cancel.Token).Subscribe(
            block =>
            {
                received += block.Samples.Length;
                cancel.Cancel();
            },
            () => isCompleted = true);

        Assert.Equal(100, received);
        Assert.True(isCompleted);
    }

    [Fact]
    public void ASampleIsItsChannelsSideBySideAsTheJournalTakesIt()
    {
        using var archive = new TemporaryArchive();
        var sample = new Sample(1, 2, 3, 4, 5, 6, 7);

        var folder = Sessions.Write(archive.Folder, [new(0, new[] { sample })], Sessions.Header((SampleColumns)31));

        Assert.Equal(
            [("sample", 0.0), ("red", 1), ("infrared", 2), ("ambient", 3), ("pleth", 4), ("accel_x", 5), ("accel_y", 6), ("accel_z", 7)],
            Sql.Row($"SELECT * FROM read_parquet('{folder}/samples.parquet', hive_partitioning = false)").Select(c => (c.Name, Convert.ToDouble(c.Value))));
    }

    private static (long, long, long, long, long, long, long, long) Bits((long Index, Sample Sample) s) => (
        s.Index,
        BitConverter.DoubleToInt64Bits(s.Sample.Red),
        BitConverter.DoubleToInt64Bits(s.Sample.Infrared),
        BitConverter.DoubleToInt64Bits(s.Sample.Ambient),
        BitConverter.DoubleToInt64Bits(s.Sample.Pleth),
        BitConverter.DoubleToInt64Bits(s.Sample.AccelerationX),
        BitConverter.DoubleToInt64Bits(s.Sample.AccelerationY),
        BitConverter.DoubleToInt64Bits(s.Sample.AccelerationZ));

    private static List<SampleBlock> Blocks(SampleColumns columns, Sample[][] parts, int[] gaps)
    {
        var blocks = new List<SampleBlock>();
        var next = 0L;
        for (var i = 0; i < parts.Length; i++)
        {
            var block = new SampleBlock(next + (gaps[i] < 100 ? 0 : gaps[i]), parts[i].Select(s => Only(columns, s)).ToArray());
            blocks.Add(block);
            next = block.EndIndex;
        }

        return blocks;
    }

    private static Sample Only(SampleColumns columns, Sample s)
    {
        double If(SampleColumns column, double value) => columns.HasFlag(column) ? value : double.NaN;
        return new(
            If(SampleColumns.Red, s.Red),
            If(SampleColumns.Infrared, s.Infrared),
            If(SampleColumns.Ambient, s.Ambient),
            If(SampleColumns.Pleth, s.Pleth),
            If(SampleColumns.Acceleration, s.AccelerationX),
            If(SampleColumns.Acceleration, s.AccelerationY),
            If(SampleColumns.Acceleration, s.AccelerationZ));
    }
}
