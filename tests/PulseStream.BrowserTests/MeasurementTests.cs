using Microsoft.Playwright;
using PulseStream.Tests.Cli;
using Xunit;

namespace PulseStream.BrowserTests;

/// <summary>A measurement on the page, from the first sample to the advice.</summary>
public sealed class MeasurementTests(Chromium chromium) : PageTests(chromium)
{
    // The header and a second: the rest is fed once the page is open.
    private const int HeadLines = 51;

    [Fact]
    public async Task ARefusalShowsItsReasonAndNoNumbers()
    {
        using var served = ServedPage.Of("recordings/finger-slips.csv", "--speed", "8");
        var page = await OpenAsync(served.Url);

        await page.ForTextAsync("help", "Seat the finger again: all the way in, straight and loose.");

        Assert.Equal((Look.Blank, Look.Blank), (await page.TextAsync("spo2"), await page.TextAsync("pulse")));
        Assert.Equal("0", await page.Locator("#ring").GetAttributeAsync("aria-valuenow"));
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

        Assert.Equal("Nothing to do now", await page.TextAsync("level"));
        Assert.Contains("Reading of record", await page.TextAsync("past-readings"), StringComparison.Ordinal);
        Assert.Contains("local emergency number", await page.Locator("#advice .caution").InnerTextAsync(), StringComparison.Ordinal);
        Assert.Equal(Look.Blank, await page.TextAsync("spo2"));
    }

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

    [Fact]
    public async Task AnAnswerJudgesTheAdviceAgainOnEveryPage()
    {
        using var served = ServedPage.Of("recordings/warm-finger.csv", "--speed", "8");
        var page = await OpenAsync(served.Url);
        var other = await OpenAsync(served.Url);
        await page.ForTextAsync("accepted", "accepted at");
        Assert.True(await page.Locator("#unanswered").IsVisibleAsync());

        await page.GetByRole(AriaRole.Button, new() { Name = "Breathless Hard to breathe" }).ClickAsync();

        await other.ForTextAsync("level", "Doctor now");
        Assert.Equal("true", await other.Locator("[data-feeling=breathless]").GetAttributeAsync("aria-pressed"));
        Assert.False(await other.Locator("#unanswered").IsVisibleAsync());

        // The same button takes the answer back: the question is open again.
        await page.Locator("[data-feeling=breathless]").FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await other.ForAsync("!document.getElementById('unanswered').hidden");
    }

    [Fact]
    public async Task TheWrongPersonSeesNoNumbers()
    {
        using var served = ServedPage.Of("recordings/warm-finger.csv", "--speed", "4", "--person", "hut-07");
        var page = await OpenAsync(served.Url);
        await page.ForTextAsync("person", "hut-07");
        await page.ForNumbersAsync();

        await page.Locator("[data-person=false]").ClickAsync();
        await page.ForTextAsync("help", "Take the clip off");
        Assert.False(await page.Locator("#numbers").IsVisibleAsync());

        await page.Locator("[data-person=true]").ClickAsync();
        await page.ForAsync("document.getElementById('spo2').offsetParent !== null");
    }

    // Told no time, the program need not look ahead for the rate.
    private static string WithoutTime(string line) => string.Join(',', line.Split(',').Where((_, column) => column != 1));
}
