using Xunit;

namespace PulseStream.Tests.Cli;

public sealed class ReportCommandTests
{
    // PNG specification (W3C), section 5.2: the signature.
    private static readonly byte[] Signature = [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A];

    [Fact]
    public void ASessionBecomesAPicture()
    {
        using var folder = new TemporaryFolder();
        ProgramRun.Of("replay", Recordings.WarmFinger, "--archive", folder["archive"]);

        var run = ProgramRun.Of("report", folder["archive"], "--out", folder["session.png"]);

        Assert.Equal((0, folder["session.png"]), (run.Status, Assert.Single(run.Lines)));
        Assert.Equal(Signature, File.ReadAllBytes(folder["session.png"])[..Signature.Length]);
    }

    [Fact]
    public void ASessionBecomesAPageThatNeedsNothingElse()
    {
        using var folder = new TemporaryFolder();
        ProgramRun.Of("replay", Recordings.WarmFinger, "--archive", folder["archive"], "--person", "hut-07");

        Assert.Equal(0, ProgramRun.Of("report", folder["archive"], "--out", folder["session.html"]).Status);

        var page = File.ReadAllText(folder["session.html"]);
        Assert.Contains("data:image/png;base64,iVBOR", page, StringComparison.Ordinal);
        Assert.Contains("97 %", page, StringComparison.Ordinal);
        Assert.DoesNotContain("http", page.Replace("http-equiv", "", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Fact]
    public void WhatIsNoSessionIsOneSentenceAndNoPicture()
    {
        using var folder = new TemporaryFolder();

        ProgramRun.Of("report", Recordings.WarmFinger, "--out", folder["session.png"]).IsRefused();
        ProgramRun.Of("report", folder.Path, "--out", folder["session.png"]).IsRefused();

        Assert.Empty(Directory.GetFiles(folder.Path));
    }
}
