using Microsoft.Playwright;
using Rookery.Browser.Tests.Browsing;
using Rookery.Browser.Tests.Courses;
using static Microsoft.Playwright.Assertions;

namespace Rookery.Browser.Tests;

/// <summary>A lesson printed by the browser: a handout, with nothing on it that only a screen can do.</summary>
/// <param name="browser">The browser.</param>
/// <param name="course">The course.</param>
public sealed class HandoutTests(SharedBrowser browser, DemoCourse course)
{
    [Theory]
    [InlineData("01-fork-and-join.html")]
    [InlineData("06-waiting-at-a-join.html")]
    public async Task Lesson_Printed_HasEveryFigureAndNoControls(string page)
    {
        // A reader in a dark room prints on white paper all the same. 680 pixels: A4 between our margins.
        await using Visit visit = await browser.Open(await course.Served(page), new Look(680, 900).Dark());
        await visit.MeetPlayers();
        await visit.Page.EmulateMediaAsync(new() { Media = Media.Print });

        await Expect(visit.Page.Locator("button:visible, select:visible, input:visible, nav:visible"))
            .ToHaveCountAsync(0);
        foreach (ILocator figure in await visit.Page.Locator("figure").AllAsync())
            await Expect(figure.Locator("svg:visible")).ToHaveCountAsync(1);
        Assert.Equal("rgb(255, 255, 255)", await visit.Page.EvaluateAsync<string>(
            "() => getComputedStyle(document.documentElement).backgroundColor"));
        Assert.Empty(await visit.Page.EvaluateAsync<string[]>("""
            () => [...document.querySelectorAll("main *")].filter(one => !one.closest("svg")
                && one.getBoundingClientRect().right > document.documentElement.clientWidth + 1)
                .map(one => one.outerHTML.slice(0, 200))
            """));
        byte[] paper = await visit.Page.PdfAsync(new() { PreferCSSPageSize = true, PrintBackground = false });
        Assert.Equal("%PDF"u8.ToArray(), paper[..4]);
        Assert.Empty(visit.Troubles);
    }
}
