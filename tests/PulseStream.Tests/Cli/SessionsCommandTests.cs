using Xunit;

namespace PulseStream.Tests.Cli;

public sealed class SessionsCommandTests
{
    [Fact]
    public void EverySessionHasALineInTheOrderOfPersonAndDate()
    {
        using var folder = new TemporaryFolder();
        Record(folder, "valley-2", "2026-01-18T07:30:00+01:00");
        Record(folder, "hut-07", "2026-01-19T07:30:00+01:00");
        Record(folder, "hut-07", "2026-01-18T07:30:00+01:00");

        var run = ProgramRun.Of("sessions", "--archive", folder.Path, "--format", "ndjson");

        Assert.Equal((0, ""), (run.Status, run.Error));
        Assert.Equal(
            [("hut-07", "2026-01-18T07:30:00+01:00"), ("hut-07", "2026-01-19T07:30:00+01:00"), ("valley-2", "2026-01-18T07:30:00+01:00")],
            run.Objects("session").Select(session => (session.GetProperty("person").GetString()!, session.GetProperty("start").GetString()!)));
        Assert.All(run.Objects("session"), session => Assert.True(session.GetProperty("readings").GetInt32() > 0 && session.GetProperty("usableSeconds").GetInt32() > 0));
        Assert.Equal(0, ProgramRun.Of("report", run.Objects("session").First().GetProperty("folder").GetString()!, "--out", folder["one.png"]).Status);
        Assert.Equal(2, ProgramRun.Of("sessions", "--archive", folder.Path, "--person", "hut-07").Lines.Length);
        Assert.Contains("hut-07", ProgramRun.Of("sessions", "--archive", folder.Path).Lines[0], StringComparison.Ordinal);
    }

    [Fact]
    public void ADamagedSessionIsSaidAndTheOthersAreListed()
    {
        using var folder = new TemporaryFolder();
        Record(folder, "hut-07", "2026-01-18T07:30:00+01:00");
        Record(folder, "hut-08", "2026-01-18T07:30:00+01:00");
        File.AppendAllText(Directory.GetFiles(folder.Path, "session.json", SearchOption.AllDirectories).First(path => path.Contains("hut-08", StringComparison.Ordinal)), " ");

        var run = ProgramRun.Of("sessions", "--archive", folder.Path);

        Assert.Equal((1, 1), (run.Status, run.Lines.Length));
        Assert.Single(run.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries));
        ProgramRun.Of("sessions", "--archive", folder["none"]).IsRefused();
        ProgramRun.Of("sessions", "--archive", folder.Path, "--person", "../hut").IsRefused();
    }

    private static void Record(TemporaryFolder folder, string person, string start) =>
        ProgramRun.Of("replay", Recordings.WarmFinger, "--archive", folder.Path, "--person", person, "--start", start, "--quiet");
}
