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

    /// <summary>Parts of the wave a second that the page is told live, and pictures of it that it draws; counting ends as soon as both are enough.</summary>
    public static Task<double[]> WavesAsync(this IPage page) => page.EvaluateAsync<double[]>(
        $$"""
        async () => {
          let [told, drawn, isLive] = [0, 0, false];
          const events = new EventSource('events');
          events.addEventListener('second', () => setTimeout(() => isLive = true, 100));
          events.addEventListener('wave', () => { told += isLive ? 1 : 0; });
          const context = CanvasRenderingContext2D.prototype, clear = context.clearRect;
          context.clearRect = function (...where) { drawn++; return clear.apply(this, where); };
          const most = [0, 0];
          for (let i = 0; i < {{Windows}} && most.some(one => one < {{LeastUpdatesPerSecond}}); i++) {
            const began = performance.now();
            [told, drawn] = [0, 0];
            await new Promise(done => setTimeout(done, {{WindowMs}}));
            const seconds = (performance.now() - began) / 1000;
            most[0] = Math.max(most[0], told / seconds);
            most[1] = Math.max(most[1], drawn / seconds);
          }
          return most;
        }
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
}
