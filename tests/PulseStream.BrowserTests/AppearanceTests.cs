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

    private const string Enhanced = "axe.run(document, { runOnly: ['color-contrast-enhanced'] }).then(found => found.passes.length)";

    // With the widest numbers there are: what sticks out of the part of the page it belongs to.
    private const string Overflowing =
        """
        () => {
          byId('spo2').textContent = '100';
          byId('pulse').textContent = '188';
          const right = byId('now').getBoundingClientRect().right;
          return [...document.querySelectorAll('#now *')].filter(part => part.getBoundingClientRect().right > right + 0.5).map(part => part.id || part.tagName);
        }
        """;

    private const float FarPixels = 88;
    private const int Wide = 1366;
    private const int Tablet = 900;
    private const int Phone = 360;
    private const int PhoneHigh = 740;

    private static readonly (ColorScheme Colours, int Width)[] Looks =
        [(ColorScheme.Light, Wide), (ColorScheme.Dark, Wide), (ColorScheme.Light, Tablet), (ColorScheme.Light, Phone), (ColorScheme.Dark, Phone)];

    [Fact]
    public async Task NothingStandsInTheWayOfAnybody()
    {
        var axe = Environment.GetEnvironmentVariable(AxeVariable);
        Assert.SkipWhen(axe is null, $"{AxeVariable} does not name the folder of the npm package axe-core.");
        using var served = ServedPage.Of("recordings/low-84.csv", "--speed", "2", "--person", "hut-07");
        var page = await OpenAsync(served.Url);
        await page.EvaluateAsync(await File.ReadAllTextAsync(Path.Combine(axe, AxeFile), TestContext.Current.CancellationToken));
        Assert.Equal(1, await page.EvaluateAsync<int>(Enhanced));

        await page.ForNumbersAsync();
        await HasNoViolationAsync(page);

        await page.ForTextAsync("level", "Emergency");
        await page.Locator("[data-feeling=severe]").ClickAsync();
        await page.ForAsync("document.querySelector('[data-feeling=severe]').getAttribute('aria-pressed') === 'true'");
        await HasNoViolationAsync(page);
    }

    [Fact]
    public async Task ThePageFollowsLightAndDarkAndAPhoneNeedsNoScrollingSideways()
    {
        using var served = ServedPage.Of("recordings/low-84.csv", "--speed", "8", "--person", "hut-07");
        var page = await OpenAsync(served.Url);
        await page.ForTextAsync("level", "Emergency");

        foreach (var (colours, width) in Looks)
        {
            await LookAsync(page, colours, width);
            Assert.Equal((width, colours), (await page.EvaluateAsync<int>("document.documentElement.scrollWidth"), await PaperAsync(page)));
            await page.KeepAsync($"bedside-{width}-{colours}".ToLowerInvariant());
        }

        // Whoever holds the phone sees what to do without a touch.
        Assert.InRange(await page.EvaluateAsync<double>("document.getElementById('action').getBoundingClientRect().bottom"), 0, PhoneHigh);
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

    [Fact]
    public async Task NumbersAreLargeEnoughToBeReadFromThreeMetres()
    {
        using var served = ServedPage.Of("recordings/low-84.csv", "--speed", "2");
        var page = await OpenAsync(served.Url);
        await page.ForNumbersAsync();

        foreach (var (colours, width) in Looks)
        {
            await LookAsync(page, colours, width);
            Assert.InRange(await page.EvaluateAsync<float>("parseFloat(getComputedStyle(document.getElementById('spo2')).fontSize)"), FarPixels, width);
            Assert.Empty(await page.EvaluateAsync<string[]>(Overflowing));
        }
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

    private static async Task HasNoViolationAsync(IPage page)
    {
        foreach (var (colours, width) in Looks)
        {
            await LookAsync(page, colours, width);
            var violations = await page.EvaluateAsync<string[]>(AxeRun);
            Assert.True(violations.Length == 0, $"{colours}, {width} wide: {string.Join('\n', violations)}");
        }
    }

    private static async Task LookAsync(IPage page, ColorScheme colours, int width)
    {
        await page.EmulateMediaAsync(new() { ColorScheme = colours });
        await page.SetViewportSizeAsync(width, width == Phone ? PhoneHigh : 900);
    }

    private static async Task<ColorScheme> PaperAsync(IPage page)
    {
        var paper = await page.EvaluateAsync<string>("getComputedStyle(document.body).backgroundColor");
        var channels = JsonSerializer.Deserialize<int[]>($"[{paper["rgb(".Length..^1]}]")!;
        return channels.Sum() > 3 * 128 ? ColorScheme.Light : ColorScheme.Dark;
    }
}
