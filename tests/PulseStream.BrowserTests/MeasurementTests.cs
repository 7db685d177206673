using PulseStream.Tests.Cli;
using Xunit;

namespace PulseStream.BrowserTests;

/// <summary>A measurement on the page, from the first sample to the advice.</summary>
public sealed class MeasurementTests(Chromium chromium) : PageTests(chromium)
{
    // The header and a second: the rest is fed once the page is open.
    public const int HeadLines = 51;

    [Fact]
    public async Task ARefusalShowsItsReasonAndNoNumbers()
    {
        using var served = ServedPage.Of("recordings/finger-slips.csv", "--speed", "8");
        var page = await OpenAsync(served.Url);

        // All at once: a moment later the finger may sit well again.
        var shown = await page.WaitForFunctionAsync(
            """
            () => byId('help').textContent === 'Seat the finger again: all the way in, straight and loose.'
              && [byId('spo2').textContent, byId('pulse').textContent, byId('ring').getAttribute('aria-valuenow')].join()
            """);

        Assert.Equal($"{Look.Blank},{Look.Blank},0", await shown.JsonValueAsync<string>());
        await page.KeepAsync("refused");
    }

    [Fact]
    public async Task AReadingIsAcceptedAfterFiveSteadySecondsAndAdviceFollows()
    {
        var lines = File.ReadLines(Recordings.WarmFinger).Select(WithoutTime).ToList();
        using var served = ServedPage.OfLines(lines.Take(HeadLines), "--speed", "8", "--rate", "50");
        var page = await OpenAsync(served.Url);
        await page.EvaluateAsync(
            """
            () => {
              window.seen = [];
              const look = () => seen.push(byId('ring').getAttribute('aria-valuenow') + ' ' + /^[0-9]{2,3}$/.test(byId('spo2').textContent));
              new MutationObserver(look).observe(byId('ring'), { attributes: true, attributeFilter: ['aria-valuenow'] });
            }
            """);
        served.Feed(lines.Skip(HeadLines));
        served.Program.Input.Close();

        await page.ForTextAsync("accepted", "accepted at");
        Assert.Equal(["1 true", "2 true", "3 true", "4 true", "5 true"], await page.EvaluateAsync<string[]>("seen.slice(-5)"));
        await page.ForTextAsync("link", "Ended");

        Assert.Equal("In the usual range", await page.TextAsync("level"));
        Assert.Contains("Reading of record", await page.TextAsync("past-readings"), StringComparison.Ordinal);
        Assert.Contains("local emergency number", await page.Locator("#advice .caution").InnerTextAsync(), StringComparison.Ordinal);
        Assert.Equal(Look.Blank, await page.TextAsync("spo2"));
    }

    // Told no time, the program need not look ahead for the rate.
    public static string WithoutTime(string line) => string.Join(',', line.Split(',').Where((_, column) => column != 1));
}
