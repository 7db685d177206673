using Microsoft.Playwright;

namespace PulseStream.BrowserTests;

/// <summary>What a person would look for on the page, and how long they would wait for it.</summary>
internal static class Look
{
    // A machine that builds and tests at once is slow; a page that is right does not need it.
    private const float Patience = 30_000;

    public const string Blank = "– –";

    /// <summary>Fewer look like a slide show.</summary>
    public const double LeastUpdatesPerSecond = 25;

    // A machine that does other things too is late now and then; what the page can do shows in its best second.
    private const int Windows = 20;
    private const int WindowMs = 1000;

    public static Task ForAsync(this IPage page, string condition) =>
        page.WaitForFunctionAsync(condition, null, new() { Timeout = Patience });

    /// <summary>Waits for numbers that can be believed.</summary>
    public static Task ForNumbersAsync(this IPage page) => page.ForAsync("/^[0-9]+$/.test(document.getElementById('spo2').textContent)");

    /// <summary>Pictures of the wave a second that the page draws; counting ends as soon as they are enough.</summary>
    public static Task<double> DrawnWavesAsync(this IPage page) => page.MostPerSecondAsync(
        """
        const context = CanvasRenderingContext2D.prototype, clear = context.clearRect;
        context.clearRect = function (...where) { count(); return clear.apply(this, where); };
        """);

    /// <summary>Parts of the wave a second that the page is told live.</summary>
    public static Task<double> ToldWavesAsync(this IPage page) => page.MostPerSecondAsync(
        """
        let isLive = false;
        const events = new EventSource('events');
        events.addEventListener('second', () => setTimeout(() => isLive = true, 100));
        events.addEventListener('wave', () => { if (isLive) { count(); } });
        """);

    public static Task ForTextAsync(this IPage page, string id, string text) =>
        page.WaitForFunctionAsync("([id, text]) => document.getElementById(id).textContent.includes(text)", new[] { id, text }, new() { Timeout = Patience });

    public static Task<string> TextAsync(this IPage page, string id) => page.Locator($"#{id}").InnerTextAsync();

    /// <summary>Keeps a picture where the variable names a folder, for people to look at.</summary>
    public static async Task KeepAsync(this IPage page, string name)
    {
        if (Environment.GetEnvironmentVariable("PULSESTREAM_SCREENSHOTS") is { Length: > 0 } folder)
        {
            await page.ScreenshotAsync(new() { Path = Path.Combine(folder, name + ".png"), FullPage = true });
        }
    }

    private static Task<double> MostPerSecondAsync(this IPage page, string count) => page.EvaluateAsync<double>(
        $$"""
        async () => {
          let counted = 0;
          const count = () => counted++;
          {{count}}
          let most = 0;
          for (let i = 0; i < {{Windows}} && most < {{LeastUpdatesPerSecond}}; i++) {
            const began = performance.now();
            counted = 0;
            await new Promise(done => setTimeout(done, {{WindowMs}}));
            most = Math.max(most, counted * 1000 / (performance.now() - began));
          }
          return most;
        }
        """);
}
