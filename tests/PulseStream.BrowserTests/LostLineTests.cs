using Microsoft.Playwright;
using PulseStream.Tests.Cli;
using Xunit;

namespace PulseStream.BrowserTests;

/// <summary>What the page does when nothing arrives any more.</summary>
public sealed class LostLineTests(Chromium chromium) : PageTests(chromium)
{
    // The first twenty seconds of a recording at 50 Hz, and its header: less than a pipe holds.
    private const int Rows = 1001;

    // Two seconds are allowed; the rest is the test's own slowness.
    private const int SecondsToBlank = 5;

    [Fact]
    public async Task ASilentCableBlanksTheNumbersAndSaysSo()
    {
        var lines = File.ReadLines(Recordings.WarmFinger).Select(MeasurementTests.WithoutTime).ToList();
        using var served = ServedPage.OfLines(lines.Take(MeasurementTests.HeadLines), "--speed", "4", "--rate", "50");
        var page = await OpenAsync(served.Url);
        served.Feed(lines.Take(Rows).Skip(MeasurementTests.HeadLines));
        await page.ForNumbersAsync();

        await page.ForTextAsync("link", "Silent");

        Assert.Equal(Look.Blank, await page.TextAsync("spo2"));
        Assert.Contains("check the cable", await page.TextAsync("help"), StringComparison.Ordinal);
        Assert.Equal("Pulse wave, standing still", await page.Locator("#wave").GetAttributeAsync("aria-label"));
        await page.KeepAsync("silent");
    }

    [Fact]
    public async Task AProgramThatIsGoneBlanksTheNumbers()
    {
        using var served = ServedPage.Of("recordings/warm-finger.csv", "--speed", "4");
        var page = await OpenAsync(served.Url);
        await page.ForNumbersAsync();

        served.Program.Kill();
        await BlankAsync(page);

        Assert.Equal("No connection", await page.TextAsync("link"));
    }

    [Fact]
    public async Task AStreamThatStallsBlanksTheNumbersThoughTheConnectionStands()
    {
        using var served = ServedPage.Of("recordings/warm-finger.csv", "--speed", "4");
        var page = await OpenAsync(served.Url);
        await page.ForNumbersAsync();

        served.Program.Stop();
        await BlankAsync(page);
    }

    private static async Task BlankAsync(IPage page) => await page.WaitForFunctionAsync(
        $"document.getElementById('spo2').textContent === '{Look.Blank}'", null, new() { Timeout = SecondsToBlank * 1000 });
}
