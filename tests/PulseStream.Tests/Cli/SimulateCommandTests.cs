using Xunit;

namespace PulseStream.Tests.Cli;

public sealed class SimulateCommandTests
{
    [Fact]
    public void TheSameOptionsMakeTheSameRecordingAgain()
    {
        using var folder = new TemporaryFolder();

        // As recordings/README.md says it was made.
        var run = ProgramRun.Of("simulate", folder["w.csv"], "--seconds", "75", "--rate", "50", "--seed", "101", "--spo2", "97", "--pulse", "68", "--perfusion", "2.5");

        Assert.Equal(0, run.Status);
        Assert.Equal(File.ReadAllText(Recordings.WarmFinger), File.ReadAllText(folder["w.csv"]));
        Assert.True(File.Exists(folder["w.truth.csv"]));
        Assert.True(File.Exists(folder["w.beats.csv"]));
    }

    [Fact]
    public void ARecordingWithoutTruthBesideItIsNeverReplaced()
    {
        using var folder = new TemporaryFolder();
        var real = folder.Write("night.csv", "precious");

        ProgramRun.Of("simulate", real, "--seconds", "1").IsRefused();

        Assert.Equal("precious", File.ReadAllText(real));
        Assert.Single(Directory.GetFiles(folder.Path));
    }

    [Fact]
    public void ACancelledSimulationLeavesNothing()
    {
        using var folder = new TemporaryFolder();
        using var cancel = new CancellationTokenSource();
        cancel.Cancel();

        var run = ProgramRun.Cancelled(Stream.Null, cancel.Token, "simulate", folder["w.csv"]);

        Assert.Equal(130, run.Status);
        Assert.Empty(Directory.GetFiles(folder.Path));
    }
}
