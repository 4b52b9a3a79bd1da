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

    [Theory]
    [InlineData("Steal", "takes")]
    [InlineData("LostRace", "too late")]
    [InlineData("Empty", "nothing")]
    [InlineData("Sleep", "sleep")]
    [InlineData("Wake", "woke")]
    [InlineData("JoinWait", "join")]
    public async Task Jump_ToTheNextOfAKind_ByMouseAlone_GoesThereAndBack(string kind, string said)
    {
        await using LabPage lab = await LabPage.Open(browser, await course.Served(
            "lab/index.html#demo=fibonacci.fj&setup=machine=unit+workers=8+when-idle=sleep+patience=1&step=0"));
        await lab.Page.GetByLabel("Jump to").SelectOptionAsync(kind);
        await lab.Button("The next one").ClickAsync();
        await Expect(lab.Clock).Not.ToContainTextAsync("Step 0 of");
        await Expect(lab.Sentence).ToContainTextAsync(said);
        string first = await lab.Clock.InnerTextAsync();
        await lab.Button("The next one").ClickAsync();
        await Expect(lab.Clock).Not.ToHaveTextAsync(first);
        await lab.Button("The one before").ClickAsync();
        await Expect(lab.Clock).ToHaveTextAsync(first);
        await Expect(lab.Sentence).ToContainTextAsync(said);
        lab.WasQuiet();
    }

    [Fact]
    public async Task Lines_OfTheProgram_AreMarkedWithWhoIsThere()
    {
        await using LabPage lab = await Open("&step=100");
        await Expect(lab.Page.Locator(".lab-listing .lab-worker").First).ToBeVisibleAsync();
        string[] before = [.. await lab.Page.Locator(".lab-listing .lab-worker").AllInnerTextsAsync()];
        Assert.NotEmpty(before);
        await lab.Press("Home");
        await Expect(lab.Page.Locator(".lab-listing .lab-worker")).ToHaveCountAsync(0);
        lab.WasQuiet();
    }

    [Fact]
    public async Task Question_AnsweredByPointingAtTheStage_IsGraded()
    {
        await using LabPage lab = await Open("&step=0");
        await lab.Turn("Predict");
        await lab.Button("Ask me").ClickAsync();
        await Expect(lab.Page.Locator("#predict-question")).ToBeVisibleAsync();
        await Expect(lab.Page.Locator(".predict-score")).ToContainTextAsync("No answers yet");

        // At first worker 0 alone has a task: whoever points at it says who acts.
        await lab.Picture.Locator("[data-target='worker=0'], [data-target='task=0']").First.ClickAsync();
        await Expect(lab.Page.Locator("input[name=predict-worker]").First).ToBeCheckedAsync();
        await lab.Button("Answer").ClickAsync();
        await Expect(lab.Page.Locator(".predict-more, .predict-sentence").First).ToBeVisibleAsync();
        lab.WasQuiet();
    }

    [Fact]
    public async Task Steal_WithMotion_LetsTheTaskTravel()
    {
        await using Visit visit = await browser.Open(
            await course.Served("lab/index.html#" + Fibonacci + "&step=0"), Look.Notebook);
        await Expect(visit.Page.Locator("#lab-stage-picture svg")).ToBeVisibleAsync();
        await Expect(visit.Page.Locator(".lab-clock")).Not.ToBeEmptyAsync();
        await visit.Page.EvaluateAsync("""
            () => {
                window.travelled = 0;
                const animate = Element.prototype.animate;
                Element.prototype.animate = function (...words) {
                    window.travelled++;
                    return animate.apply(this, words);
                };
            }
            """);
        await visit.Page.Locator("#lab-find").FillAsync("first steal");
        await visit.Page.Keyboard.PressAsync("Enter");
        await Expect(visit.Page.Locator(".lab-sentence")).ToContainTextAsync(" takes ");

        // A jump shows where things are; a step shows how they came there.
        await visit.Page.Locator("#lab-find").BlurAsync();
        await visit.Page.Keyboard.PressAsync("ArrowLeft");
        await Expect(visit.Page.Locator(".lab-sentence")).Not.ToContainTextAsync(" takes ");
        await visit.Page.EvaluateAsync("() => { window.travelled = 0; }");
        await visit.Page.Keyboard.PressAsync("ArrowRight");
        await Expect(visit.Page.Locator(".lab-sentence")).ToContainTextAsync(" takes ");
        await visit.Page.WaitForFunctionAsync("() => window.travelled > 0");
        Assert.Empty(visit.Troubles);
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
