using Microsoft.Playwright;
using Rookery.Browser.Tests.Browsing;
using static Microsoft.Playwright.Assertions;

namespace Rookery.Browser.Tests.Labs;

/// <summary>The lab as a reader sees it: what it says, and the keys and buttons that the tests use.</summary>
/// <param name="visit">The visit, with the lab open.</param>
internal sealed class LabPage(Visit visit) : IAsyncDisposable
{
    /// <summary>The page itself.</summary>
    public IPage Page => visit.Page;

    /// <summary>What happened in the step that is shown, in words; read out when it changes.</summary>
    public ILocator Sentence => Page.Locator(".lab-sentence");

    /// <summary>Which step is shown.</summary>
    public ILocator Clock => Page.Locator(".lab-clock");

    /// <summary>The picture of workers and deques.</summary>
    public ILocator Picture => Page.Locator("#lab-stage-picture");

    /// <summary>Opens the lab.</summary>
    /// <param name="browser">The browser.</param>
    /// <param name="address">Its address, with what is shown behind <c>#</c>.</param>
    /// <param name="look">How it is looked at; as on a notebook when nothing is said.</param>
    public static async Task<LabPage> Open(SharedBrowser browser, Uri address, Look? look = null)
    {
        Look still = (look ?? Look.Notebook) with { Motion = ReducedMotion.Reduce };
#pragma warning disable CA2000 // The lab that is returned ends the visit.
        Visit visit = await browser.Open(address, still);
#pragma warning restore CA2000
        try
        {
            var lab = new LabPage(visit);
            await lab.IsReady();
            return lab;
        }
        catch
        {
            await visit.DisposeAsync();
            throw;
        }
    }

    /// <summary>Waits until the stage shows a run.</summary>
    public async Task IsReady()
    {
        await Expect(Picture.Locator("svg")).ToBeVisibleAsync();
        await Expect(Clock).Not.ToBeEmptyAsync();
    }

    /// <summary>Waits until no run is being made: what the clock says then stays.</summary>
    public Task IsMade() => Expect(Page.Locator(".lab-making")).ToHaveCountAsync(0);

    /// <summary>A button by its name, as one who hears the page finds it.</summary>
    public ILocator Button(string name, ILocator? within = null)
    {
        return within is null
            ? Page.GetByRole(AriaRole.Button, new() { Name = name, Exact = true })
            : within.GetByRole(AriaRole.Button, new() { Name = name, Exact = true });
    }

    /// <summary>Opens one of the panes beside the stage.</summary>
    public Task Turn(string pane) => Page.GetByRole(AriaRole.Tab, new() { Name = pane, Exact = true }).ClickAsync();

    /// <summary>Enters one of the rooms.</summary>
    public Task Enter(string room) => Button(room, Page.Locator(".lab-rooms")).ClickAsync();

    /// <summary>Presses a key, as often as told.</summary>
    public async Task Press(string key, int times = 1)
    {
        for (int i = 0; i < times; i++)
            await Page.Keyboard.PressAsync(key);
    }

    /// <summary>What a button makes the browser save.</summary>
    public async Task<byte[]> Saved(string button)
    {
        IDownload download = await Page.RunAndWaitForDownloadAsync(() => Button(button).ClickAsync());
        return await File.ReadAllBytesAsync(await download.PathAsync());
    }

    /// <summary>Holds what happened on the way to be without trouble.</summary>
    public void WasQuiet() => Assert.Empty(visit.Troubles);

    /// <summary>What axe finds in a part that was opened: all of its rules in the light, and in the dark what another
    /// theme can change.</summary>
    public Task<string[]> Violations(ColorScheme theme = ColorScheme.Light) => theme == ColorScheme.Light
        ? Accessibility.Violations(visit)
        : Accessibility.ContrastViolations(visit);

    /// <inheritdoc/>
    public ValueTask DisposeAsync() => visit.DisposeAsync();
}
