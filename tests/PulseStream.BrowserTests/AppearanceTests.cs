using System.Text.Json;
using Microsoft.Playwright;
using Xunit;

namespace PulseStream.BrowserTests;

/// <summary>Light and dark, wide and narrow, for eyes, keyboards and screen readers.</summary>
public sealed class AppearanceTests(Chromium chromium) : PageTests(chromium)
{
    // The names of the folder of the npm package axe-core and of its file.
    private const string AxeVariable = "PULSESTREAM_AXE";
    private const string AxeFile = "axe.min.js";

    // Enhanced contrast, 7:1, is off unless asked for.
    private const string AxeRun = "axe.run(document, { rules: { 'color-contrast-enhanced': { enabled: true } } })"
        + ".then(found => found.violations.map(one => one.id + ': ' + one.nodes.map(node => node.target + ' ' + node.failureSummary).join('; ')))";

    private const float FarPixels = 88;

    [Theory]
    [InlineData(ColorScheme.Light, 1366)]
    [InlineData(ColorScheme.Dark, 1366)]
    [InlineData(ColorScheme.Light, 360)]
    [InlineData(ColorScheme.Dark, 360)]
    public async Task NothingStandsInTheWayOfAnybody(ColorScheme colours, int width)
    {
        var axe = Environment.GetEnvironmentVariable(AxeVariable);
        Assert.SkipWhen(axe is null, $"{AxeVariable} does not name the folder of the npm package axe-core.");
        using var served = ServedPage.Of("recordings/low-84.csv", "--speed", "8", "--person", "hut-07");
        var page = await OpenAsync(served.Url, width, colours: colours);
        var script = await File.ReadAllTextAsync(Path.Combine(axe, AxeFile), TestContext.Current.CancellationToken);
        await page.ForAsync("document.getElementById('spo2').textContent.length < 3");
        await page.EvaluateAsync(script);
        Assert.Empty(await page.EvaluateAsync<string[]>(AxeRun));

        await page.ForTextAsync("level", "Emergency");
        await page.Locator("[data-feeling=severe]").ClickAsync();
        await page.ForAsync("document.querySelector('[data-feeling=severe]').getAttribute('aria-pressed') === 'true'");
        Assert.Empty(await page.EvaluateAsync<string[]>(AxeRun));
    }

    [Theory]
    [InlineData(ColorScheme.Light)]
    [InlineData(ColorScheme.Dark)]
    public async Task ThePageFollowsLightAndDark(ColorScheme colours)
    {
        using var served = ServedPage.Of("recordings/warm-finger.csv", "--speed", "8", "--person", "hut-07");
        var page = await OpenAsync(served.Url, colours: colours);
        await page.ForTextAsync("accepted", "accepted at");

        var paper = await page.EvaluateAsync<string>("getComputedStyle(document.body).backgroundColor");
        var channels = JsonSerializer.Deserialize<int[]>($"[{paper["rgb(".Length..^1]}]")!;
        Assert.Equal(colours == ColorScheme.Light, channels.Sum() > 3 * 128);
        await page.KeepAsync($"bedside-{colours}".ToLowerInvariant());
    }

    [Theory]
    [InlineData(ColorScheme.Light)]
    [InlineData(ColorScheme.Dark)]
    public async Task APhoneNeedsNoScrollingSideways(ColorScheme colours)
    {
        using var served = ServedPage.Of("recordings/low-84.csv", "--speed", "8", "--person", "hut-07");
        var page = await OpenAsync(served.Url, width: 360, height: 740, colours);
        await page.ForTextAsync("level", "Emergency");

        Assert.Equal(360, await page.EvaluateAsync<int>("document.documentElement.scrollWidth"));
        await page.KeepAsync($"phone-{colours}".ToLowerInvariant());
    }

    [Fact]
    public async Task ThePageRunsUnderItsOwnPolicyWithoutAComplaint()
    {
        using var served = ServedPage.Of("recordings/warm-finger.csv", "--speed", "8");
        var page = await OpenAsync(new Uri("about:blank"), keepsPolicy: true);
        var complaints = new List<string>();
        page.PageError += (_, problem) => complaints.Add(problem);
        page.Console += (_, line) => complaints.Add(line.Text);
        await page.GotoAsync(served.Url.ToString());

        await page.Locator("#accepted small").WaitForAsync();

        Assert.Empty(complaints);
    }

    [Theory]
    [InlineData(360)]
    [InlineData(1366)]
    public async Task NumbersAreLargeEnoughToBeReadFromThreeMetres(int width)
    {
        using var served = ServedPage.Of("recordings/warm-finger.csv", "--speed", "2");
        var page = await OpenAsync(served.Url, width);
        await page.ForAsync("document.getElementById('spo2').textContent.length < 3");

        Assert.True(await page.EvaluateAsync<float>("parseFloat(getComputedStyle(document.getElementById('spo2')).fontSize)") >= FarPixels);
        Assert.True(await page.EvaluateAsync<bool>("document.getElementById('pulse').getBoundingClientRect().right <= innerWidth"));
    }

    [Fact]
    public async Task EveryAnswerIsReachedByTheKeyboard()
    {
        using var served = ServedPage.Of("recordings/warm-finger.csv");
        var page = await OpenAsync(served.Url);
        var reached = new List<string>();
        for (var i = 0; i < 6; i++)
        {
            await page.Keyboard.PressAsync("Tab");
            reached.Add(await page.EvaluateAsync<string>("document.activeElement.dataset.feeling ?? document.activeElement.dataset.person"));
        }

        Assert.Equal(["well", "poorly", "breathless", "severe", "true", "false"], reached);
    }
}
