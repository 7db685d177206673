using Microsoft.Playwright;

namespace PulseStream.BrowserTests;

/// <summary>Tests that open pages; each test's windows close with it, for a page that is open draws.</summary>
public abstract class PageTests(Chromium chromium) : IAsyncDisposable
{
    private readonly List<IBrowserContext> _windows = [];

    public async ValueTask DisposeAsync()
    {
        foreach (var window in _windows)
        {
            await window.DisposeAsync();
        }

        GC.SuppressFinalize(this);
    }

    /// <summary>Opens an address in a window of its own.</summary>
    protected async Task<IPage> OpenAsync(Uri url, int width = 1366, int height = 900, ColorScheme colours = ColorScheme.Light, bool keepsPolicy = false)
    {
        var page = await chromium.OpenAsync(url, width, height, colours, keepsPolicy);
        _windows.Add(page.Context);
        return page;
    }
}
