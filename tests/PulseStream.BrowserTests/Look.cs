using Microsoft.Playwright;

namespace PulseStream.BrowserTests;

/// <summary>What a person would look for on the page, and how long they would wait for it.</summary>
internal static class Look
{
    // A machine that builds and tests at once is slow; a page that is right does not need it.
    private const float Patience = 30_000;

    public const string Blank = "– –";

    public static Task ForAsync(this IPage page, string condition) =>
        page.WaitForFunctionAsync(condition, null, new() { Timeout = Patience });

    public static Task ForTextAsync(this IPage page, string id, string text) =>
        page.WaitForFunctionAsync("([id, text]) => document.getElementById(id).textContent.includes(text)", new[] { id, text }, new() { Timeout = Patience });

    public static Task<string> TextAsync(this IPage page, string id) => page.Locator($"#{id}").InnerTextAsync();

    public static Task<string> PixelsAsync(this IPage page) => page.EvaluateAsync<string>("document.getElementById('wave').toDataURL()");

    /// <summary>Keeps a picture where the variable names a folder, for people to look at.</summary>
    public static async Task KeepAsync(this IPage page, string name)
    {
        if (Environment.GetEnvironmentVariable("PULSESTREAM_SCREENSHOTS") is { Length: > 0 } folder)
        {
            await page.ScreenshotAsync(new() { Path = Path.Combine(folder, name + ".png"), FullPage = true });
        }
    }
}
