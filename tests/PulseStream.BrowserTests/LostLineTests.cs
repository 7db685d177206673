using Xunit;

namespace PulseStream.BrowserTests;

/// <summary>What the page does when nothing arrives any more.</summary>
public sealed class LostLineTests(Chromium chromium) : PageTests(chromium)
{
    // The first twenty seconds of a recording at 100 Hz, and its header.
    private const int Rows = 2001;

    // Two seconds are allowed; the rest is the test's own slowness.
    private const int SecondsToBlank = 5;

    [Fact]
    public async Task ASilentCableBlanksTheNumbersAndSaysSo()
    {
        using var served = ServedPage.Of("-", "--speed", "8");
        Feed(served);
        var page = await OpenAsync(served.Url);
        await page.ForAsync("document.getElementById('spo2').textContent.length < 3");

        await page.ForTextAsync("link", "Silent");

        Assert.Equal(Look.Blank, await page.TextAsync("spo2"));
        Assert.Contains("check the cable", await page.TextAsync("help"), StringComparison.Ordinal);
        Assert.Equal("Pulse wave, standing still", await page.Locator("#wave").GetAttributeAsync("aria-label"));
        await page.KeepAsync("silent");
    }

    [Fact]
    public async Task AProgramThatIsGoneBlanksTheNumbers()
    {
        using var served = ServedPage.Of("recordings/warm-finger.csv", "--speed", "2");
        var page = await OpenAsync(served.Url);
        await page.ForAsync("document.getElementById('spo2').textContent.length < 3");

        served.Kill();
        await page.WaitForFunctionAsync($"document.getElementById('spo2').textContent === '{Look.Blank}'", null, new() { Timeout = SecondsToBlank * 1000 });

        Assert.Equal("No connection", await page.TextAsync("link"));
    }

    [Fact]
    public async Task AStreamThatStallsBlanksTheNumbersThoughTheConnectionStands()
    {
        using var served = ServedPage.Of("recordings/warm-finger.csv", "--speed", "2");
        var page = await OpenAsync(served.Url);
        await page.ForAsync("document.getElementById('spo2').textContent.length < 3");

        served.Stop();
        await page.WaitForFunctionAsync($"document.getElementById('spo2').textContent === '{Look.Blank}'", null, new() { Timeout = SecondsToBlank * 1000 });
    }

    private static void Feed(ServedPage served)
    {
        foreach (var line in File.ReadLines(Path.Combine(ServedPage.Root, "recordings", "warm-finger.csv")).Take(Rows))
        {
            served.Input.WriteLine(line);
        }

        served.Input.Flush();
    }
}
