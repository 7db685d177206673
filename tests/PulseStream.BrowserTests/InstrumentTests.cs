using System.Diagnostics;
using PulseStream.Archive;
using PulseStream.Tests.Cli;
using PulseStream.Tests.Whole.Cable;
using Xunit;

namespace PulseStream.BrowserTests;

/// <summary>The page of an instrument on a cable.</summary>
public sealed class InstrumentTests(Chromium chromium) : PageTests(chromium)
{
    // Two seconds are allowed. The port is looked at ten times a second, the page shows what it is told at once.
    private static readonly TimeSpan Soon = TimeSpan.FromSeconds(2);

    [Fact]
    public async Task APulledCableIsShownWithinTwoSecondsAndTheSessionGoesOnWhenItIsBack()
    {
        PulledCable.SkipWhereLacking();
        using var folder = new TemporaryFolder();
        using var cable = new PulledCable();
        using var served = ServedPage.OfInstrument(cable, "hut-text", "--archive", folder["archive"], "--person", "hut-07");
        var page = await OpenAsync(served.Url);
        await page.ForTextAsync("link", "Waiting");
        Assert.False(Directory.EnumerateFiles(folder.Path, "*", SearchOption.AllDirectories).Any(), "A session was begun before the first byte.");
        using var player = ServedPage.Play(cable, "hut-text", speed: 2);
        await page.ForNumbersAsync();

        var pulled = Stopwatch.StartNew();
        cable.Pull();
        await page.ForTextAsync("link", "Lost");
        var shown = pulled.Elapsed;
        Assert.Equal(Look.Blank, await page.TextAsync("spo2"));
        Assert.Contains("plug it in again", await page.TextAsync("help"), StringComparison.Ordinal);
        await page.KeepAsync("pulled");

        cable.Plug();
        await page.ForNumbersAsync();

        TestContext.Current.SendDiagnosticMessage("a pulled cable shows after {0:0.00} s", shown.TotalSeconds);
        Assert.True(shown < Soon, $"{shown.TotalSeconds:0.00} s until the page showed it");
        Assert.Equal(130, served.Program.Interrupt());
        Assert.True(ArchivedSession.Open(Assert.Single(SessionArchive.Sessions(folder["archive"]))).Counts.Missing > 0);
    }
}
