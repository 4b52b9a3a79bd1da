using Microsoft.Playwright;

namespace Rookery.Browser.Tests.Browsing;

/// <summary>The one browser of a run; each visit is a reader of its own, with nothing kept from another.</summary>
public sealed class SharedBrowser : IAsyncLifetime
{
    private const float TimeoutMax = 180_000;

    private IPlaywright? _driver;
    private IBrowser? _browser;

    /// <inheritdoc/>
    public async ValueTask InitializeAsync()
    {
        // A slow machine is no failure; but what never comes must fail, and not keep the whole run from its end.
        Assertions.SetDefaultExpectTimeout(TimeoutMax);
        _driver = await Playwright.CreateAsync();
        _browser = await _driver.Chromium.LaunchAsync(new()
        {
            ExecutablePath = BrowserProgram.Find(),
            Headless = true,
            // A browser that asks its makers for news would be taken for a page that leaves its origin.
            Args =
            [
                "--no-sandbox", "--disable-gpu", "--disable-quic", "--disable-background-networking",
                "--disable-component-update", "--disable-sync",
            ],
        });
    }

    /// <summary>Opens an address as a new reader.</summary>
    /// <param name="address">The page.</param>
    /// <param name="look">How it is looked at.</param>
    /// <param name="prepare">What to set up before the page loads.</param>
    public async Task<Visit> Open(Uri address, Look look, Func<IPage, Task>? prepare = null)
    {
        IBrowserContext reader = await _browser!.NewContextAsync(new()
        {
            ViewportSize = new() { Width = look.Width, Height = look.Height },
            ColorScheme = look.Theme,
            ReducedMotion = look.Motion,
        });
        IPage page = await reader.NewPageAsync();
        page.SetDefaultTimeout(TimeoutMax);
        var visit = new Visit(page, address);
        if (prepare is not null)
            await prepare(page);
        await page.GotoAsync(address.AbsoluteUri);
        return visit;
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        if (_browser is not null)
            await _browser.CloseAsync();
        _driver?.Dispose();
    }
}
