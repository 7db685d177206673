using PulseStream.Tests.Cli;
using Xunit;

namespace PulseStream.BrowserTests;

/// <summary>What the page keeps and shows of sessions before.</summary>
public sealed class ArchiveTests(Chromium chromium) : PageTests(chromium)
{
    [Fact]
    public async Task CtrlCSealsTheSessionAndTheNextPageShowsItsPicture()
    {
        using var archive = new TemporaryFolder();
        using (var first = ServedPage.Of("recordings/warm-finger.csv", "--speed", "8", "--archive", archive.Path, "--person", "hut-07"))
        {
            var seen = await OpenAsync(first.Url);
            await seen.ForTextAsync("accepted", "accepted at");
            Assert.Equal(130, first.Program.Interrupt());
        }

        Assert.Single(Directory.GetFiles(archive.Path, "session.json", SearchOption.AllDirectories));
        Assert.Empty(Directory.GetFiles(archive.Path, "journal.db", SearchOption.AllDirectories));

        using var second = ServedPage.Of("recordings/warm-finger.csv", "--archive", archive.Path, "--person", "hut-07");
        var page = await OpenAsync(second.Url);
        await page.Locator("#sessions button").First.ClickAsync();
        await page.ForAsync("document.querySelector('#sessions img')?.naturalWidth > 100");
        await page.KeepAsync("sessions-before");
    }
}
