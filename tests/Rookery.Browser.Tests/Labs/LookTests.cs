using Microsoft.Playwright;
using Rookery.Browser.Tests.Browsing;
using Rookery.Browser.Tests.Courses;
using static Microsoft.Playwright.Assertions;

namespace Rookery.Browser.Tests.Labs;

/// <summary>What the stage looks like, beside the pictures of it that somebody looked at and kept.</summary>
/// <param name="browser">The browser.</param>
/// <param name="course">The course.</param>
public sealed class LookTests(SharedBrowser browser, DemoCourse course)
{
    [Theory]
    [InlineData("projector", 1920, 1080, ColorScheme.Light)]
    [InlineData("notebook", 1366, 768, ColorScheme.Dark)]
    [InlineData("phone", 390, 844, ColorScheme.Light)]
    public async Task Stage_InAWindow_LooksAsItDidAndHasNothingBesideIt(
        string name, int width, int height, ColorScheme theme)
    {
        await using LabPage lab = await LabPage.Open(
            browser, await course.Served("lab/index.html#demo=fibonacci.fj&setup=machine=unit+workers=3&step=60"),
            new Look(width, height, theme));
        await Expect(lab.Sentence).ToBeVisibleAsync();
        await Expect(lab.Button("One step")).ToBeVisibleAsync();
        Assert.Equal(0, await lab.Page.EvaluateAsync<int>(
            "() => document.documentElement.scrollWidth - document.documentElement.clientWidth"));
        await lab.Page.EvaluateAsync("() => document.fonts.ready");
        StoredLook.Compare(name, await lab.Page.ScreenshotAsync(new() { Animations = ScreenshotAnimations.Disabled }));
        lab.WasQuiet();
    }
}
