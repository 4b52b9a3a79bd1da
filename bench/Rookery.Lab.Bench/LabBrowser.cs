using System.Reflection;
using Microsoft.Playwright;
using Rookery.Browser.Tests.Browsing;
using Rookery.Browser.Tests.Courses;

namespace Rookery.Lab.Bench;

/// <summary>A published lab on a loopback server, and a browser to open it with.</summary>
internal sealed class LabBrowser : IAsyncDisposable
{
    private readonly IPlaywright _driver;
    private readonly IBrowser _browser;
    private readonly StaticSite _site;
    private readonly string _folder;
    private readonly string _probe;

    private LabBrowser(IPlaywright driver, IBrowser browser, StaticSite site, string folder, string probe) =>
        (_driver, _browser, _site, _folder, _probe) = (driver, browser, site, folder, probe);

    /// <summary>Serves a folder and starts a browser.</summary>
    public static async Task<LabBrowser> Of(string folder)
    {
        IPlaywright driver = await Playwright.CreateAsync();
        IBrowser browser = await driver.Chromium.LaunchAsync(new()
        {
            ExecutablePath = BrowserProgram.Find(),
            Headless = true,
            Args = ["--no-sandbox", "--disable-gpu", "--disable-background-networking", "--disable-component-update"],
        });
        using var text = new StreamReader(Assembly.GetExecutingAssembly().GetManifestResourceStream("probe.js")!);
        string probe = await text.ReadToEndAsync();
#pragma warning disable CA2000 // What is returned ends the site.
        return new(driver, browser, await StaticSite.Of(folder), folder, probe);
#pragma warning restore CA2000
    }

    /// <summary>Opens the lab as a new reader, with nothing kept, and waits for its stage.</summary>
    /// <param name="fragment">What the address says behind <c>#</c>.</param>
    public async Task<IPage> Open(string fragment)
    {
        IBrowserContext reader = await _browser.NewContextAsync(
            new() { ViewportSize = new() { Width = 1366, Height = 768 } });
        IPage page = await reader.NewPageAsync();
        page.SetDefaultTimeout(120_000);
        await page.AddInitScriptAsync(_probe);
        await page.GotoAsync(new Uri(_site.Address, "index.html#" + fragment).AbsoluteUri);
        await page.WaitForFunctionAsync("() => probe.times.stage > 0");
        return page;
    }

    /// <summary>Bytes of what a page fetched, each in the smallest form that lies beside it.</summary>
    public async Task<long> Fetched(IPage page)
    {
        string[] addresses = await page.EvaluateAsync<string[]>("() => probe.fetched()");
        return addresses.Append(new Uri(_site.Address, "index.html").AbsoluteUri).Distinct()
            .Sum(address => SizeOf(new Uri(address).AbsolutePath[1..]));
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await _browser.CloseAsync();
        _driver.Dispose();
        await _site.DisposeAsync();
    }

    private long SizeOf(string path)
    {
        string plain = Path.Combine(_folder, path);
        string small = plain + ".br";
        return new FileInfo(File.Exists(small) ? small : plain).Length;
    }
}
