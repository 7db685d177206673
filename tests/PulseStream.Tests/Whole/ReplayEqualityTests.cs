using CsCheck;
using PulseStream.Tests.Cli;
using Xunit;

namespace PulseStream.Tests.Whole;

public sealed class ReplayEqualityTests
{
    private static readonly string[] Options = ["--format", "ndjson", "--beats", "--quiet"];

    public static TheoryData<string> Names => [.. Directory.GetFiles(Recordings.PathOf(""), "*.csv")
        .Where(path => Path.GetFileName(path).Count(letter => letter == '.') == 1)
        .Select(path => Path.GetFileName(path))
        .Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Names))]
    public void AnArchivedSessionReplaysLikeItsRecording(string name)
    {
        using var folder = new TemporaryFolder();

        var recorded = ProgramRun.Of(["replay", Recordings.PathOf(name), "--archive", folder["archive"], .. Options]);
        var again = ProgramRun.Of(["replay", folder["archive"], .. Options]);

        Assert.Equal(0, recorded.Status);
        Assert.Equal(recorded.Output, again.Output);
    }

    [Fact]
    public void APipeIsReadLikeAFileHoweverItIsCut()
    {
        var bytes = File.ReadAllBytes(Recordings.PathOf("finger-slips.csv"));
        var replayed = Results(ProgramRun.Of(["replay", Recordings.PathOf("finger-slips.csv"), .. Options]));

        Gen.Int[1, 5000].Array[1, 8].Sample(
            cuts => Assert.Equal(replayed, Results(ProgramRun.Fed(new CutPipe(bytes, cuts), ["replay", "-", .. Options]))),
            iter: 20,
            seed: "0000KxDJuyv3",
            threads: 1);
    }

    // The first line names the source, which differs.
    private static string[] Results(ProgramRun run) => run.Lines[1..];

    private sealed class CutPipe(byte[] bytes, int[] cuts) : MemoryStream(bytes)
    {
        private int _turn;

        public override bool CanSeek => false;

        public override ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default) =>
            ValueTask.FromResult(Read(buffer.Span[..Math.Min(buffer.Length, cuts[_turn++ % cuts.Length])]));
    }
}
