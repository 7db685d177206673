using PulseStream.Archive;
using Xunit;
using Invented = PulseStream.Tests.Archive.Sessions;

namespace PulseStream.Tests.Cli;

public sealed class ForgetCommandTests
{
    [Fact]
    public void EverythingOfAPersonGoesAndNothingOfOthers()
    {
        using var folder = new TemporaryFolder();
        ProgramRun.Of("replay", Recordings.WarmFinger, "--archive", folder.Path, "--person", "hut-07", "--quiet");
        ProgramRun.Of("replay", Recordings.WarmFinger, "--archive", folder.Path, "--person", "hut-071", "--quiet");
        using (var cutOff = Invented.Begin(folder.Path, identity: new SessionIdentity("cut-off", "hut-07")))
        {
            cutOff.Flush();
        }

        var run = ProgramRun.Of("forget", "hut-07", "--archive", folder.Path, "--format", "ndjson");

        var told = Assert.Single(run.Objects("forgotten"));
        Assert.Equal((0, 2, 2), (run.Status, told.GetProperty("sessions").GetInt32(), told.GetProperty("days").GetInt32()));
        Assert.Equal(["person=hut-071"], Directory.GetFileSystemEntries(folder.Path).Select(Path.GetFileName), StringComparer.Ordinal);
        ProgramRun.Of("forget", "hut-07", "--archive", folder.Path).IsRefused();
        Assert.Contains("1 sessions on 1 days", ProgramRun.Of("forget", "hut-071", "--archive", folder.Path).Output, StringComparison.Ordinal);
    }

    [Fact]
    public void ASessionThatRunsIsNotPulledAwayAndAPathIsNoPerson()
    {
        using var folder = new TemporaryFolder();
        using var running = Invented.Begin(folder.Path);

        ProgramRun.Of("forget", "hut-07", "--archive", folder.Path).IsRefused();
        ProgramRun.Of("forget", "../hut-07", "--archive", folder.Path).IsRefused();
        Assert.True(Directory.Exists(running.Folder));
    }
}
