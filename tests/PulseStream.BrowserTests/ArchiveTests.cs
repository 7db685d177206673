using Xunit;

namespace PulseStream.BrowserTests;

/// <summary>What the page keeps and shows of sessions before.</summary>
public sealed class ArchiveTests(Chromium chromium) : PageTests(chromium)
{
    [Fact]
    public async Task CtrlCSealsTheSessionAndTheNextPageShowsItsPicture()
    {
        var archive = Directory.CreateTempSubdirectory("pulsestream-page-");
        try
        {
            using (var first = ServedPage.Of("recordings/warm-finger.csv", "--speed", "8", "--archive", archive.FullName, "--person", "hut-07"))
            {
                var seen = await OpenAsync(first.Url);
                await seen.ForTextAsync("accepted", "accepted at");
                Assert.Equal(130, first.Interrupted());
            }

            Assert.Single(Directory.GetFiles(archive.FullName, "session.json", SearchOption.AllDirectories));
            Assert.Empty(Directory.GetFiles(archive.FullName, "journal.db", SearchOption.AllDirectories));

            using var second = ServedPage.Of("recordings/warm-finger.csv", "--archive", archive.FullName, "--person", "hut-07");
            var page = await OpenAsync(second.Url);
            await page.Locator("#sessions button").First.ClickAsync();
            await page.ForAsync("document.querySelector('#sessions img')?.naturalWidth > 100");
            await page.KeepAsync("sessions-before");
        }
        finally
        {
            archive.Delete(recursive: true);
        }
    }
}
