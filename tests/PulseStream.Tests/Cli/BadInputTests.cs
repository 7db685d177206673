using System.Text;
using PulseStream.Triage.Policies;
using Xunit;

namespace PulseStream.Tests.Cli;

public sealed class BadInputTests
{
    private const string Header = "sample,time_s,red,infrared\n";

    [Theory]
    [InlineData("")]
    [InlineData("a,b\n1,2\n")]
    [InlineData(Header)]
    [InlineData(Header + "0,0,x,y\n1,0.02,x,y\n2,0.04,x,y\n")]
    [InlineData("sample,red,infrared\n0,1,1\n1,1,1\n")]
    [InlineData("sample,time_s,red,infrared\n0,0,1,1\n1,1,1,1\n2,2,1,1\n")]
    [InlineData("sample,time_s,red,infrared\n9,0.18,1,1\n8,0.16,1,1\n7,0.14,1,1\n6,0.12,1,1\n")]
    public void ARecordingThatCannotBeUsedIsOneSentence(string text)
    {
        using var folder = new TemporaryFolder();

        var run = ProgramRun.Of("replay", folder.Write("bad.csv", text), "--quiet");

        run.IsRefused();
        Assert.Contains("bad.csv", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void AnotherEncodingIsOneSentence()
    {
        using var folder = new TemporaryFolder();
        File.WriteAllText(folder["wide.csv"], Header + "0,0,1,1\n", Encoding.Unicode);

        ProgramRun.Of("replay", folder["wide.csv"]).IsRefused();
    }

    [Fact]
    public void RandomBytesAreOneSentence()
    {
        var bytes = new byte[100_000];
        new Random(7).NextBytes(bytes);

        ProgramRun.Fed(new MemoryStream(bytes), "replay", "-", "--quiet").IsRefused();
    }

    [Fact]
    public void EndlessZerosAreOneSentence() => ProgramRun.Fed(new EndlessZeros(), "replay", "-").IsRefused();

    [Theory]
    [InlineData]
    [InlineData("nonsense")]
    [InlineData("replay")]
    [InlineData("replay", "no-such.csv")]
    [InlineData("replay", ".", "--quiet")]
    [InlineData("replay", "--nonsense")]
    [InlineData("replay", "-", "-")]
    [InlineData("replay", "-", "--rate", "24")]
    [InlineData("replay", "-", "--rate", "fast")]
    [InlineData("replay", "-", "--full-scale", "0")]
    [InlineData("replay", "-", "--format", "xml")]
    [InlineData("replay", "-", "--start", "2026-03-01T07:30:00")]
    [InlineData("replay", "a.csv", "b.csv", "--start", "2026-03-01T07:30:00Z")]
    [InlineData("replay", "-", "--archive", "/dev/null/archive")]
    [InlineData("replay", "-", "--person", "Anna Muster", "--archive", "a")]
    [InlineData("replay", "-", "--curve", "no-such.json")]
    [InlineData("replay", "-", "--policy", "no-such.json")]
    [InlineData("replay", "-", "--feeling", "fine")]
    [InlineData("advise")]
    [InlineData("advise", "--spo2", "100.1")]
    [InlineData("advise", "--spo2", "-1")]
    [InlineData("advise", "--spo2", "NaN")]
    [InlineData("advise", "--spo2", "9,5")]
    [InlineData("advise", "--spo2", "95", "--pulse", "0")]
    [InlineData("advise", "--spo2", "95", "--target", "92-88")]
    [InlineData("advise", "--spo2", "95", "--target", "88")]
    [InlineData("advise", "--spo2", "95", "--previous-spo2", "93")]
    [InlineData("advise", "--spo2", "95", "--previous-minutes", "60")]
    [InlineData("advise", "--spo2", "95", "--previous-spo2", "93", "--previous-minutes", "-1")]
    [InlineData("advise", "--spo2", "95", "--spo2", "96")]
    [InlineData("advise", "--spo2", "95", "--nonsense")]
    [InlineData("simulate", "--nonsense")]
    [InlineData("simulate", "out.csv", "--spo2", "500")]
    [InlineData("simulate", "out.csv", "--episode", "dance:1-2")]
    [InlineData("simulate", "/dev/null/out.csv", "--seconds", "1")]
    public void AWrongCommandLineIsOneSentenceAndNoResult(params string[] args)
    {
        var run = ProgramRun.Of(args);

        run.IsRefused();
        Assert.Equal("", run.Output);
    }

    [Fact]
    public void OverlappingBandsOfAPolicyAreOneSentence()
    {
        using var folder = new TemporaryFolder();
        var policy = folder.Write("policy.json", TriagePolicy.AdultsAtHomeSeaLevel.Json.Replace("\"to\":95", "\"to\":96", StringComparison.Ordinal));

        var run = ProgramRun.Of("advise", "--spo2", "95", "--policy", policy);

        run.IsRefused();
        Assert.Contains("policy.json", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void OneBadRecordingAmongSeveralLeavesTheOthersDone()
    {
        var run = ProgramRun.Of("replay", Recordings.WarmFinger, "no-such.csv", Recordings.SlowFall, "--format", "ndjson");

        Assert.Equal(1, run.Status);
        Assert.Equal(["warm-finger.csv", "slow-fall.csv"], run.Objects("session").Select(line => line.GetProperty("source").GetString()!), StringComparer.Ordinal);
        Assert.Equal(2, run.Objects("end").Count());
        Assert.Contains("no-such.csv", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void ATruncatedSessionIsOneSentence()
    {
        using var folder = new TemporaryFolder();
        ProgramRun.Of("replay", Recordings.WarmFinger, "--archive", folder["archive"]);
        var samples = Assert.Single(Directory.GetFiles(folder["archive"], "samples.parquet", SearchOption.AllDirectories));
        using (var file = File.OpenWrite(samples))
        {
            file.SetLength(file.Length / 2);
        }

        var run = ProgramRun.Of("replay", samples);

        run.IsRefused();
        Assert.Contains("samples.parquet", run.Error, StringComparison.Ordinal);
    }

    private sealed class EndlessZeros : MemoryStream
    {
        public override bool CanSeek => false;

        public override ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default)
        {
            buffer.Span.Clear();
            return ValueTask.FromResult(buffer.Length);
        }
    }
}
