using Microsoft.Playwright;
using PulseStream.BrowserTests;
using Xunit;

[assembly: AssemblyFixture(typeof(Chromium))]

// These tests wait more than they work: three at a time keep two processors busy.
[assembly: Xunit.v3.Parallelization(MaxThreads = 3)]

namespace PulseStream.BrowserTests;

/// <summary>Debian's browser, started once for all tests; where there is none, they are skipped and say so.</summary>
public sealed class Chromium : IAsyncLifetime
{
    private const string Executable = "/usr/bin/chromium";

    private static readonly string[] Flags =
    [
        "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
        "--disable-background-networking", "--disable-component-update", "--disable-sync",
    ];

    private IPlaywright? _playwright;
    private IBrowser? _browser;

    public async ValueTask InitializeAsync()
    {
        if (File.Exists(Executable))
        {
            _playwright = await Playwright.CreateAsync();
            _browser = await _playwright.Chromium.LaunchAsync(new() { ExecutablePath = Executable, Headless = true, Args = Flags });
        }
    }

    /// <summary>Opens an address in a window of its own. A test that looks at the page with scripts cannot do so under its policy.</summary>
    public async Task<IPage> OpenAsync(Uri url, int width = 1366, int height = 900, ColorScheme colours = ColorScheme.Light, bool keepsPolicy = false)
    {
        Assert.SkipWhen(_browser is null, $"There is no {Executable} here: install Debian's package chromium.");
        var context = await _browser.NewContextAsync(new()
        {
            ViewportSize = new() { Width = width, Height = height },
            ColorScheme = colours,
            Locale = "en-GB",
            BypassCSP = !keepsPolicy,
        });
        var page = await context.NewPageAsync();
        await page.GotoAsync(url.ToString());
        return page;
    }

    public async ValueTask DisposeAsync()
    {
        if (_browser is not null)
        {
            await _browser.DisposeAsync();
        }

        _playwright?.Dispose();
    }
}
