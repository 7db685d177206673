using Xunit;

namespace PulseStream.BrowserTests;

/// <summary>The advice on the page.</summary>
public sealed class AdviceTests(Chromium chromium) : PageTests(chromium)
{
    [Fact]
    public async Task AnUrgentReadingIsAdvisedOnWhileTheFingerIsOn()
    {
        using var served = ServedPage.Of("recordings/low-84.csv", "--speed", "4");
        var page = await OpenAsync(served.Url);

        await page.ForTextAsync("level", "Emergency");

        Assert.Equal("Receiving", await page.TextAsync("link"));
        Assert.StartsWith("Ring your local emergency number now", await page.TextAsync("action"), StringComparison.Ordinal);
        Assert.True(await page.Locator("#due").IsHiddenAsync());
    }

    [Fact]
    public async Task TheTimeToTheRecheckCountsDown()
    {
        using var served = ServedPage.Of("recordings/cold-finger-warms.csv", "--speed", "8");
        var page = await OpenAsync(served.Url);

        await page.ForAsync("!document.getElementById('due').hidden");
        var first = await page.TextAsync("countdown");
        await page.ForAsync($"document.getElementById('countdown').textContent !== '{first}'");

        Assert.Matches("^59:[0-9]{2}$", await page.TextAsync("countdown"));
    }
}
