using System.Globalization;
using Rookery.Browser.Tests.Browsing;
using Rookery.Browser.Tests.Courses;
using Rookery.Testing;

namespace Rookery.Browser.Tests;

/// <summary>Lessons of strangers in a real browser: nothing of theirs runs, asks, or opens.</summary>
/// <param name="browser">The browser.</param>
public sealed class HostilePageTests(SharedBrowser browser)
{
    // Whatever runs sets a flag, and shows a dialog; whatever loads asks another host; and either is a trouble.
    [Fact]
    public async Task Attacks_OfAStranger_DoNothing()
    {
        using var folder = new TempFolder();
        for (int i = 0; i < HostileHtml.Attacks.Count; i++)
        {
            string attack = HostileHtml.Attacks[i].Replace("alert(1)", "alert(window.hit=1)", StringComparison.Ordinal);
            string title = Name(i, "Attack ", "");
            folder.Put(Name(i, "lessons/", ".md"), $"---\ntitle: {title}\n---\n\nx\n\n{attack}\n\ny\n");
        }

        await RookeryProcess.Run("publish", folder["lessons"], "--out", folder["site"], "--no-cache");
        await using StaticSite site = await StaticSite.Of(folder["site"]);
        await using Visit visit = await browser.Open(site.Address, Look.Notebook);
        for (int i = 0; i < HostileHtml.Attacks.Count; i++)
        {
            await visit.Page.GotoAsync(new Uri(site.Address, Name(i, "", ".html")).AbsoluteUri);
            await Provoke(visit);
            Assert.False(await visit.Page.EvaluateAsync<bool>("() => 'hit' in window"), HostileHtml.Attacks[i]);
            Assert.Empty(visit.Troubles);
        }
    }

    // The page's own words to the browser are a second wall: even script that got into a page would not run.
    [Fact]
    public async Task Policy_OfThePage_StopsScriptThatGotIn()
    {
        using var folder = new TempFolder();
        folder.Put("lessons/a.md", "---\ntitle: A page\n---\n\nWords.\n");
        await RookeryProcess.Run("publish", folder["lessons"], "--out", folder["site"], "--no-cache");
        await using StaticSite site = await StaticSite.Of(folder["site"]);
        await using Visit visit = await browser.Open(new(site.Address, "a.html"), Look.Notebook);

        Assert.False(await visit.Page.EvaluateAsync<bool>("""
            () => {
                const script = document.createElement("script");
                script.textContent = "window.hit = 1";
                document.body.append(script);
                document.body.insertAdjacentHTML("beforeend", "<img src=x onerror='window.hit = 1'>");
                return "hit" in window;
            }
            """));
        Assert.Contains(
            visit.Troubles, trouble => trouble.Contains("Content Security Policy", StringComparison.Ordinal));
    }

    // Points at, opens and presses everything but honest links to the web.
    private static async Task Provoke(Visit visit) => await visit.Page.EvaluateAsync("""
        () => {
            for (const one of document.querySelectorAll("main *")) {
                one.dispatchEvent(new MouseEvent("mouseover", { bubbles: true }));
                one.focus?.();
                if (one.localName === "details") one.open = !one.open;
                const href = one.getAttribute("href") ?? "";
                if (!href.startsWith("http") && !href.startsWith("mailto")) one.click?.();
            }
        }
        """);

    private static string Name(int i, string before, string after) =>
        string.Create(CultureInfo.InvariantCulture, $"{before}{i:00}{after}");
}
