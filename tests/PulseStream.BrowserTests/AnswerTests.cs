using Microsoft.Playwright;
using Xunit;

namespace PulseStream.BrowserTests;

/// <summary>What people answer on the page, and what it changes.</summary>
public sealed class AnswerTests(Chromium chromium) : PageTests(chromium)
{
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
}
