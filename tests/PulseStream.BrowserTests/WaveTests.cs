using Microsoft.Playwright;
using PulseStream.Tests.Whole.Cable;
using Xunit;

namespace PulseStream.BrowserTests;

/// <summary>How smoothly the wave moves; nothing else is measured meanwhile.</summary>
[CollectionDefinition(nameof(WaveTests), DisableParallelization = true)]
[Collection(nameof(WaveTests))]
public sealed class WaveTests(Chromium chromium) : PageTests(chromium)
{
    // The slowest source sends 25 frames a second by a clock that may be late; the page draws between them.
    private const double Late = 0.9;

    [Fact]
    public async Task TheWaveOfARecordingMovesAtTwentyFiveUpdatesASecond()
    {
        using var served = ServedPage.Of("recordings/warm-finger.csv");
        await MovesAsync(await OpenAsync(served.Url), "recording");
    }

    [Theory]
    [InlineData("hut-text")]
    [InlineData("hut-binary")]
    public async Task TheWaveOfAnInstrumentMovesAtTwentyFiveUpdatesASecond(string layout)
    {
        PulledCable.SkipWhereLacking();
        using var cable = new PulledCable();
        using var served = ServedPage.OfInstrument(cable, layout);
        var page = await OpenAsync(served.Url);
        await page.ForTextAsync("link", "Waiting");
        using var player = ServedPage.Play(cable, layout);
        await MovesAsync(page, layout);
    }

    private static async Task MovesAsync(IPage page, string source)
    {
        await page.ForTextAsync("link", "Receiving");
        var most = await page.WavesAsync();
        var (told, drawn) = (most[0], most[1]);

        TestContext.Current.SendDiagnosticMessage("{0}: {1:0.0} updates told, {2:0.0} drawn a second", source, told, drawn);
        Assert.True(told >= Late * Look.LeastUpdatesPerSecond, $"{told} updates a second told");
        Assert.True(drawn >= Look.LeastUpdatesPerSecond, $"{drawn} updates a second drawn");
    }
}
