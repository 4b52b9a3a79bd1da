using System.Text;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Rookery.Browser.Tests.Browsing;
using Rookery.Browser.Tests.Courses;
using static Microsoft.Playwright.Assertions;

namespace Rookery.Browser.Tests.Labs;

/// <summary>The stage in a lecture: played, scrubbed, pointed at, kept and printed.</summary>
/// <param name="browser">The browser.</param>
/// <param name="course">The course.</param>
public sealed class StageTests(SharedBrowser browser, DemoCourse course)
{
    private const string Fibonacci = "demo=fibonacci.fj&setup=machine=unit+workers=3";

    [Fact]
    public async Task Run_PlayedAndScrubbed_GoesOnByItselfAndStopsWhereTold()
    {
        await using LabPage lab = await Open("&step=0");
        await lab.Page.Locator(".lab-controls select").First.SelectOptionAsync(new SelectOptionValue { Value = "32" });
        await lab.Button("Play").ClickAsync();
        await lab.Page.WaitForFunctionAsync("() => Number(document.querySelector('.lab-scrub').value) >= 5");
        await lab.Button("Pause").ClickAsync();
        await Expect(lab.Button("Play")).ToBeVisibleAsync();

        ILocator scrub = lab.Page.Locator(".lab-scrub");
        await scrub.FillAsync("100");
        await Expect(lab.Clock).ToContainTextAsync("Step 100 of");
        await Expect(scrub).ToHaveAttributeAsync("aria-valuetext", new Regex("100"));

        // By letters to the next of a kind, with Shift back; the picture changes with the step.
        string picture = await lab.Picture.InnerHTMLAsync();
        await lab.Page.Locator("body").FocusAsync();
        await scrub.BlurAsync();
        await lab.Press("s");
        await Expect(lab.Sentence).ToContainTextAsync(" takes ");
        string steal = await lab.Clock.InnerTextAsync();
        Assert.NotEqual(picture, await lab.Picture.InnerHTMLAsync());
        await lab.Press("s");
        await Expect(lab.Clock).Not.ToHaveTextAsync(steal);
        await lab.Press("Shift+S");
        await Expect(lab.Clock).ToHaveTextAsync(steal);
        lab.WasQuiet();
    }

    [Fact]
    public async Task Task_ClickedInAPicture_IsMarkedInAllAndItsLifeLeadsToItsSteps()
    {
        await using LabPage lab = await Open("&step=100");
        // One that is drawn in the tree as well, which shows the largest parts alone.
        string target = await lab.Page.EvaluateAsync<string>("""
            () => [...document.querySelectorAll("#lab-stage-picture [data-target^='task=']")]
                .map(one => one.dataset.target)
                .find(target => document.querySelector(`.lab-right .lab-picture [data-target='${target}']`))
            """);
        await lab.Picture.Locator($"[data-target='{target}']").First.ClickAsync();
        await Expect(lab.Page.Locator(".lab-task h3")).ToBeVisibleAsync();
        Assert.True(await lab.Page.Locator($".lab-picture .lab-marked[data-target='{target}']").CountAsync() >= 2);

        ILocator life = lab.Page.Locator(".lab-life li button");
        await life.First.ClickAsync();
        await Expect(lab.Clock).Not.ToContainTextAsync("Step 100 of");
        await lab.Page.WaitForFunctionAsync("target => location.hash.includes(target)", target);
        lab.WasQuiet();
    }

    [Fact]
    public async Task Picture_KeptAndPrinted_IsAWholeFile()
    {
        await using LabPage lab = await Open("&step=100");
        await lab.Button("Files").ClickAsync();
        string svg = Encoding.UTF8.GetString(await lab.Saved("Picture · SVG"));
        Assert.StartsWith("<svg", svg.TrimStart('\uFEFF'), StringComparison.Ordinal);
        Assert.Contains("<title", svg, StringComparison.Ordinal);
        byte[] png = await lab.Saved("Picture · PNG");
        Assert.Equal("PNG"u8.ToArray(), png[1..4]);
        await lab.Press("Escape");

        // On paper the controls are of no use, and what is shown stays.
        await lab.Page.EmulateMediaAsync(new() { Media = Media.Print });
        await Expect(lab.Picture.Locator("svg")).ToBeVisibleAsync();
        await Expect(lab.Sentence).ToBeVisibleAsync();
        await Expect(lab.Page.Locator(".lab-controls")).ToBeHiddenAsync();
        lab.WasQuiet();
    }

    private async Task<LabPage> Open(string state) =>
        await LabPage.Open(browser, await course.Served("lab/index.html#" + Fibonacci + state));
}
