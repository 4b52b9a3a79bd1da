using Microsoft.Playwright;
using Rookery.Browser.Tests.Browsing;
using Rookery.Browser.Tests.Courses;
using static Microsoft.Playwright.Assertions;

namespace Rookery.Browser.Tests.Labs;

/// <summary>The lab in German: whatever is opened, asked and computed in it, nothing is said in English.</summary>
/// <param name="browser">The browser.</param>
/// <param name="course">The course.</param>
public sealed class GermanTests(SharedBrowser browser, DemoCourse course)
{
    private const string Fibonacci = "demo=fibonacci.fj&setup=machine=unit+workers=3&step=60&lang=de";

    [Fact]
    public async Task Stage_InGerman_SaysNothingInEnglish()
    {
        await using LabPage lab = await Open();
        await AssertGerman(lab);
        await lab.Picture.Locator("[data-target^='task=']").First.ClickAsync();
        await Expect(lab.Page.Locator(".lab-task h3")).ToBeVisibleAsync();
        await AssertGerman(lab);
        await lab.Press("?");
        await Expect(lab.Page.Locator("#lab-help")).ToBeVisibleAsync();
        await AssertGerman(lab);
        await lab.Press("Escape");
        await lab.Button("Dateien").ClickAsync();
        await AssertGerman(lab);
        await lab.Press("Escape");

        await lab.Page.Locator("#lab-find").FillAsync("erster Diebstahl");
        await lab.Press("Enter");
        await Expect(lab.Page.Locator(".lab-answer")).ToContainTextAsync("1 von 1 gefunden");
        await lab.Page.Locator("#lab-find").FillAsync("Unsinn");
        await lab.Press("Enter");
        await Expect(lab.Page.Locator(".lab-answer")).ToContainTextAsync("Unsinn");
        await AssertGerman(lab);
        lab.WasQuiet();
    }

    [Fact]
    public async Task Panes_InGerman_SayNothingInEnglish()
    {
        await using LabPage lab = await Open();
        await lab.Turn("Ändern");
        await lab.Page.Locator(".whatif-number input").First.FillAsync("5");
        await lab.Press("Tab");
        await Expect(lab.Page.Locator(".whatif-told p").First).Not.ToBeEmptyAsync();
        await AssertGerman(lab);
        await lab.Turn("Vorhersagen");
        await lab.Button("Fragen Sie mich").ClickAsync();
        await Expect(lab.Page.Locator("#predict-question")).ToBeVisibleAsync();
        await AssertGerman(lab);
        lab.WasQuiet();
    }

    [Fact]
    public async Task Studies_OfEveryKindInGerman_SayNothingInEnglish()
    {
        await using LabPage lab = await Open();
        await lab.Enter("Studien");
        foreach (string kind in (string[])["Beschleunigung", "Eine Einstellung", "Behauptung"])
        {
            await lab.Button(kind).ClickAsync();
            await lab.Page.GetByLabel("Startwerte für jede Kombination").FillAsync("3");
            await lab.Button("Starten").ClickAsync();
            await Expect(lab.Page.Locator(".study-asks [role=status]")).ToContainTextAsync("Läufe sind fertig");
            await Expect(lab.Page.Locator("#study-picture svg")).ToBeVisibleAsync();
            await AssertGerman(lab);
        }

        await Expect(lab.Page.Locator(".study-verdict")).ToContainTextAsync("Im Mittel ist");

        // A figure that is there already changes its language with the page.
        await lab.Page.Locator(".lab-top select").Last.SelectOptionAsync("en");
        await Expect(lab.Page.Locator(".study-verdict")).ToContainTextAsync("The mean");
        await Expect(lab.Page.Locator("#study-picture svg desc")).ToContainTextAsync("interval");
        lab.WasQuiet();
    }

    [Theory]
    [InlineData("growable-no-owner-fence", "Tso")]
    [InlineData("two-locks-wrong-order", "Sc")]
    [InlineData("growable-no-release-fence", "Ra")]
    public async Task Deques_CheckedInGerman_SayNothingInEnglish(string algorithm, string memory)
    {
        await using LabPage lab = await Open();
        await lab.Enter("Deques");
        ILocator choices = lab.Page.Locator(".deque-choices select");
        await choices.First.SelectOptionAsync($"deques/broken/{algorithm}.dq");
        await choices.Last.SelectOptionAsync(memory);
        await lab.Button("Prüfen").ClickAsync();
        await Expect(lab.Page.Locator(".deque-verdicts")).ToContainTextAsync("Verletzt");
        await Expect(lab.Page.Locator("#deque-history svg")).ToBeVisibleAsync();

        // The figure holds the sentences of all steps.
        await lab.Button("Zum Ende").ClickAsync();
        await Expect(lab.Button("Ein Schritt")).ToBeDisabledAsync();
        await AssertGerman(lab);

        foreach (string tab in (string[])["Ergebnisse", "Fortschritt", "Von Hand"])
        {
            await lab.Button(tab).ClickAsync();
            await Expect(lab.Button(tab)).ToHaveAttributeAsync("aria-pressed", "true");
            await AssertGerman(lab);
        }

        await lab.Page.Locator(".deque-choice").First.ClickAsync();
        await Expect(lab.Page.Locator(".deque-says")).ToContainTextAsync("Schritte bisher: 1");
        await AssertGerman(lab);

        // The figure changes its language with the page.
        await Expect(lab.Page.Locator("#deque-history svg title").First).ToHaveTextAsync("Eine Ausführung");
        await lab.Page.Locator(".lab-top select").Last.SelectOptionAsync("en");
        await Expect(lab.Page.Locator("#deque-history svg title").First).ToHaveTextAsync("An execution");
        lab.WasQuiet();
    }

    private static async Task AssertGerman(LabPage lab) => Assert.Empty(await ShownTexts.English(lab.Page));

    private async Task<LabPage> Open() =>
        await LabPage.Open(browser, await course.Served("lab/index.html#" + Fibonacci));
}
