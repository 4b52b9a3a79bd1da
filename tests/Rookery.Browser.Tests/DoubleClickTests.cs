using Microsoft.Playwright;
using Rookery.Browser.Tests.Browsing;
using Rookery.Browser.Tests.Courses;
using static Microsoft.Playwright.Assertions;

namespace Rookery.Browser.Tests;

/// <summary>A published course opened from disk, as by a double click: no server, and all of it works.</summary>
/// <param name="browser">The browser.</param>
/// <param name="course">The course.</param>
public sealed class DoubleClickTests(SharedBrowser browser, DemoCourse course)
{
    [Fact]
    public async Task Course_FromDisk_LeadsToLessonsWhosePlayersPlay()
    {
        await using Visit visit = await browser.Open(await course.OnDisk("index.html"), Look.Hall);
        await visit.Page.Locator(".rk-lessons a").First.ClickAsync();
        await visit.MeetPlayers();
        ILocator says = visit.Page.Locator(".rk-says").First;
        string before = await says.InnerTextAsync();

        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Next ▶" }).First.ClickAsync();
        await Expect(says).Not.ToHaveTextAsync(before);
        await visit.Page.Locator(".rk-foot [rel=next]").ClickAsync();
        await Expect(visit.Page).ToHaveURLAsync(new System.Text.RegularExpressions.Regex("/02-"));

        Assert.True(await visit.Page.EvaluateAsync<bool>(
            "() => document.fonts.ready.then(fonts => [...fonts].some(font => font.status === 'loaded'))"));
        Assert.Empty(visit.Troubles);
    }

    [Fact]
    public async Task Page_WithoutScript_ShowsEveryMomentAsAPicture()
    {
        await using Visit visit = await browser.Open(
            await course.OnDisk("03-a-deque-each.html"), Look.Notebook,
            page => page.RouteAsync("**/*.js", route => route.FulfillAsync(new() { Body = "" })));

        await Expect(visit.Page.Locator(".rk-player:visible")).ToHaveCountAsync(0);
        int moments = await visit.Page.Locator(".rk-moment").CountAsync();
        Assert.InRange(moments, 3, int.MaxValue);
        await Expect(visit.Page.Locator(".rk-moment:visible")).ToHaveCountAsync(moments);
    }
}
