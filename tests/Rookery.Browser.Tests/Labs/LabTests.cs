using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Rookery.Browser.Tests.Browsing;
using Rookery.Browser.Tests.Courses;
using Rookery.Testing;
using static Microsoft.Playwright.Assertions;

namespace Rookery.Browser.Tests.Labs;

/// <summary>The lab of a published course, on a plain web server, used as a lecturer or a student uses it.</summary>
/// <param name="browser">The browser.</param>
/// <param name="course">The course.</param>
public sealed partial class LabTests(SharedBrowser browser, DemoCourse course)
{
    private const string Fibonacci = "demo=fibonacci.fj&setup=machine=unit+workers=3";

    // Of the run that is shown: what was taken back stands in the address as the former one for a while.
    private const string ShowsFive = "() => /[#&]setup=[^&]*workers=5/.test(location.hash)";

    [Fact]
    public async Task Exhibit_OpenedInTheLab_IsThereAtTheStepThatThePlayerShowed()
    {
        await using Visit visit = await browser.Open(await course.Served("01-fork-and-join.html"), Look.Notebook);
        await visit.MeetPlayers();
        ILocator link = visit.Page.GetByRole(AriaRole.Link, new() { Name = "Open in the lab" }).First;
        string leads = await link.GetAttributeAsync("href") ?? "";
        int step = int.Parse(StepIn().Match(leads).Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture);
        IPage opened = visit.Page;
        await visit.Page.GotoAsync(new Uri(await course.Served("01-fork-and-join.html"), leads).AbsoluteUri);
        await Expect(opened.Locator("#lab-stage-picture svg")).ToBeVisibleAsync();
        await Expect(opened.Locator(".lab-clock")).ToContainTextAsync($"Step {step} of");
        Assert.Empty(visit.Troubles);
    }

    [Fact]
    public async Task Lab_BesideTheEditor_IsServedUnderItsOwnPolicy()
    {
        using var folder = new TempFolder();
        await using LiveSite site = await LiveSite.Of(folder.Put("lesson.md", "---\ntitle: Words\n---\n\nWords.\n"));
        var address = new Uri(site.Address, "lab/index.html#" + Fibonacci + "&step=0");
        await using LabPage lab = await LabPage.Open(browser, address);
        await lab.Press("ArrowRight");
        await Expect(lab.Clock).ToContainTextAsync("Step 1 of");
        lab.WasQuiet();
    }

    [Fact]
    public async Task Stage_ByKeysAlone_StepsJumpsFindsAndSpeaks()
    {
        await using LabPage lab = await Open(Fibonacci + "&step=0");
        string first = await lab.Sentence.InnerTextAsync();
        await lab.Press("ArrowRight");
        await Expect(lab.Sentence).Not.ToHaveTextAsync(first);
        await Expect(lab.Sentence).ToHaveAttributeAsync("aria-live", "polite");
        await Expect(lab.Clock).ToContainTextAsync("Step 1 of");
        await lab.Press("ArrowRight", 4);
        await Expect(lab.Clock).ToContainTextAsync("Step 5 of");
        await lab.Press("ArrowLeft");
        await Expect(lab.Clock).ToContainTextAsync("Step 4 of");
        await lab.Press("Home");
        await Expect(lab.Sentence).ToHaveTextAsync(first);

        ILocator help = lab.Page.Locator("#lab-help");
        await lab.Press("?");
        await Expect(help).ToBeVisibleAsync();
        await lab.Press("Escape");
        await Expect(help).ToBeHiddenAsync();
        await lab.Press("?");
        await Expect(help).ToBeVisibleAsync();
        await lab.Button("Close", help).ClickAsync();
        await Expect(help).ToBeHiddenAsync();

        await lab.Press("/");
        await Expect(lab.Page.Locator("#lab-find")).ToBeFocusedAsync();
        await lab.Page.Keyboard.TypeAsync("first steal");
        await lab.Press("Enter");
        await Expect(lab.Sentence).ToContainTextAsync("takes fib(11) from worker 0");
        await Expect(lab.Page.Locator(".lab-answer")).ToContainTextAsync("1 of 1 found");

        await lab.Press("Escape");
        await lab.Page.Locator("body").FocusAsync();
        await lab.Button("The next one").FocusAsync();
        await lab.Press("Enter");
        await Expect(lab.Sentence).Not.ToContainTextAsync("fib(11)");
        await Expect(lab.Sentence).ToContainTextAsync(" takes ");
        lab.WasQuiet();
    }

    [Fact]
    public async Task Trace_KeptInTheLab_IsTheCommandLinesByteForByte()
    {
        using var folder = new TempFolder();
        await using LabPage lab = await Open(Fibonacci);
        await lab.Button("Files").ClickAsync();
        byte[] parquet = await lab.Saved("Trace · Parquet"), rows = await lab.Saved("Trace · CSV");
        foreach ((string name, byte[] kept) in new[] { ("t.parquet", parquet), ("t.csv", rows) })
        {
            await RookeryProcess.Run(
                "run", RepositoryFile.At("lessons/fibonacci.fj"), "--machine", "unit", "--workers", "3",
                "--trace", folder[name]);
            Assert.Equal(await File.ReadAllBytesAsync(folder[name], TestContext.Current.CancellationToken), kept);
        }

        // And back again: what was kept is a trace that the lab opens, finds lawful and steps through.
        await lab.Page.Locator("#lab-file-input").SetInputFilesAsync(folder["t.parquet"]);
        await Expect(lab.Page.GetByText("found the trace lawful")).ToBeVisibleAsync();
        await lab.Press("End");
        await Expect(lab.Sentence).Not.ToBeEmptyAsync();
        lab.WasQuiet();
    }

    [Fact]
    public async Task Choices_Changed_StandBesideTheFormerRunAndCanBeTakenBack()
    {
        await using LabPage lab = await Open(Fibonacci);
        await lab.Turn("What if");
        ILocator workers = lab.Page.Locator(".whatif-number").Filter(new() { HasText = "how many share" });
        await workers.GetByRole(AriaRole.Spinbutton).FillAsync("5");
        await lab.Press("Tab");
        await Expect(lab.Page.Locator(".whatif-comparison")).ToBeVisibleAsync();
        await Expect(lab.Page.Locator(".whatif-inputs")).ToContainTextAsync("5");
        await Expect(lab.Page.Locator(".whatif-told p").First).Not.ToBeEmptyAsync();

        // The address holds what is shown: whoever opens it sees the same.
        await lab.Page.WaitForFunctionAsync(ShowsFive);
        await lab.Button("Take back", lab.Page.Locator(".whatif-history")).ClickAsync();
        await Expect(workers.GetByRole(AriaRole.Spinbutton)).ToHaveValueAsync("3");
        await lab.Button("Do again", lab.Page.Locator(".whatif-history")).ClickAsync();
        await Expect(workers.GetByRole(AriaRole.Spinbutton)).ToHaveValueAsync("5");
        await Expect(lab.Page.Locator(".whatif-comparison")).ToBeVisibleAsync();
        await lab.Page.WaitForFunctionAsync(ShowsFive);
        await using LabPage other = await LabPage.Open(browser, new(lab.Page.Url));

        // The former run stands there first: with the comparison comes the one beside it.
        await Expect(other.Page.Locator(".whatif-comparison")).ToBeVisibleAsync();
        await other.IsMade();
        await lab.IsMade();
        Assert.Equal(await lab.Clock.InnerTextAsync(), await other.Clock.InnerTextAsync());
        other.WasQuiet();
        lab.WasQuiet();
    }

    [Fact]
    public async Task Program_EditedWithAnError_IsMarkedAndTheRunStays()
    {
        await using LabPage lab = await Open(Fibonacci);
        await lab.Button("Edit").ClickAsync();
        ILocator text = lab.Page.Locator("#lab-editor");
        string whole = await text.InputValueAsync();
        await text.FillAsync(whole.Replace("join", "joni", StringComparison.Ordinal));
        await Expect(lab.Page.Locator("#lab-editor-problems li").First).ToContainTextAsync("Line");
        await Expect(text).ToHaveAttributeAsync("aria-invalid", "true");
        await Expect(lab.Picture.Locator("svg")).ToBeVisibleAsync();
        await text.FillAsync(whole.Replace("work 1", "work 2", StringComparison.Ordinal));
        await Expect(lab.Page.Locator("#lab-editor-state")).ToContainTextAsync("The run shown is of this text");
        lab.WasQuiet();
    }

    [Fact]
    public async Task NextEvent_Asked_IsAnsweredGradedAndCounted()
    {
        await using LabPage lab = await Open(Fibonacci);
        await lab.Turn("Predict");
        await lab.Button("Ask me").ClickAsync();
        await Expect(lab.Page.Locator("#predict-question")).ToBeVisibleAsync();
        await lab.Page.GetByRole(AriaRole.Radio, new() { Name = "worker 0", Exact = false }).First.CheckAsync();
        await lab.Page.Locator("input[name=predict-kind]").First.CheckAsync();
        foreach (ILocator select in await lab.Page.Locator(".predict-task select").AllAsync())
            await select.SelectOptionAsync(new SelectOptionValue { Index = 1 });
        foreach (string name in (string[])["predict-end", "predict-victim"])
        {
            if (await lab.Page.Locator($"input[name={name}]").CountAsync() > 0)
                await lab.Page.Locator($"input[name={name}]").First.CheckAsync();
        }

        await lab.Button("Answer").ClickAsync();
        await Expect(lab.Page.Locator(".predict-sentence")).Not.ToBeEmptyAsync();
        await Expect(lab.Page.Locator(".predict-parts li").First).ToBeVisibleAsync();
        await Expect(lab.Button("Next question")).ToBeFocusedAsync();
        lab.WasQuiet();
    }

    [Fact]
    public async Task Curve_Run_IsDrawnAndALongOneCanBeStopped()
    {
        await using LabPage lab = await Open(Fibonacci);
        await lab.Enter("Studies");
        await lab.Page.GetByLabel("Seeds for each combination").FillAsync("2");
        await lab.Button("Run").ClickAsync();
        await Expect(lab.Page.Locator("#study-picture svg")).ToBeVisibleAsync();
        await Expect(lab.Button("Run")).ToBeEnabledAsync();
        await Expect(lab.Page.Locator("table").First).ToBeVisibleAsync();

        await lab.Page.GetByLabel("Seeds for each combination").FillAsync("1000");
        await lab.Button("Run").ClickAsync();
        await lab.Button("Stop").ClickAsync();
        await Expect(lab.Button("Run")).ToBeEnabledAsync();
        lab.WasQuiet();
    }

    [Fact]
    public async Task Algorithm_CheckedInThePage_HasAVerdictAndAWitnessToStepThrough()
    {
        await using LabPage lab = await Open(Fibonacci);
        await lab.Enter("Deques");
        await lab.Page.Locator(".deque-choices select").First.SelectOptionAsync(
            new SelectOptionValue { Value = "deques/broken/growable-last-item-not-contested.dq" });
        await lab.Button("Check").ClickAsync();
        await Expect(lab.Page.Locator(".deque-verdicts")).ToContainTextAsync("broken", new() { IgnoreCase = true });

        ILocator walk = lab.Page.Locator(".deque-walk"), says = lab.Page.Locator(".deque-says p[aria-live]");
        string atStart = await says.InnerTextAsync();
        await lab.Button("One step", walk).ClickAsync();
        await Expect(says).Not.ToHaveTextAsync(atStart);

        // Whoever gets the link sees the verdict and stands at the same step of the witness.
        await lab.Page.WaitForFunctionAsync("() => /deque=.*step=1/.test(location.hash)");
        await using (Visit visit = await browser.Open(new(lab.Page.Url), Look.Notebook))
        {
            await Expect(visit.Page.Locator(".deque-says p[aria-live]")).ToHaveTextAsync(await says.InnerTextAsync());
            await Expect(visit.Page.Locator(".deque-verdicts")).ToContainTextAsync(
                "broken", new() { IgnoreCase = true });
            Assert.Empty(visit.Troubles);
        }

        await lab.Button("To the end", walk).ClickAsync();
        await Expect(lab.Button("One step", walk)).ToBeDisabledAsync();

        await lab.Button("Check under all four models").ClickAsync();
        await Expect(lab.Page.Locator(".deque-findings table")).ToBeVisibleAsync();
        lab.WasQuiet();
    }

    [Theory]
    [InlineData(ColorScheme.Light)]
    [InlineData(ColorScheme.Dark)]
    public async Task Rooms_InEachTheme_AreAccessible(ColorScheme theme)
    {
        await using LabPage lab = await Open(Fibonacci + "&step=40", Look.Notebook with { Theme = theme });
        Assert.Empty(await lab.Violations());
        foreach (string pane in (string[])["What if", "Predict"])
        {
            await lab.Turn(pane);
            Assert.Empty(await lab.Violations(theme));
        }

        foreach (string room in (string[])["Studies", "Deques"])
        {
            await lab.Enter(room);
            await Expect(lab.Page.Locator(".lab-ready")).ToBeVisibleAsync();
            Assert.Empty(await lab.Violations(theme));
        }

        lab.WasQuiet();
    }

    [Fact]
    public async Task Network_GoneAfterTheFirstLoad_LeavesTheLabWorking()
    {
        await using LabPage lab = await Open(Fibonacci + "&step=0");
        await lab.Page.EvaluateAsync("async () => { await navigator.serviceWorker.ready; }");
        await lab.Page.WaitForFunctionAsync("""
            async () => {
                const engine = new URL("_framework/dotnet.native.wasm", location);
                return await caches.match(engine) !== undefined;
            }
            """);
        await lab.Page.Context.SetOfflineAsync(true);
        await lab.Page.ReloadAsync();
        await lab.IsReady();
        await lab.Press("ArrowRight");
        await Expect(lab.Clock).ToContainTextAsync("Step 1 of");
        await lab.Page.Context.SetOfflineAsync(false);
        lab.WasQuiet();
    }

    [Fact]
    public async Task Words_InGerman_AreGermanAndSoIsTheNarration()
    {
        await using LabPage lab = await Open(Fibonacci + "&lang=de&step=1");
        await Expect(lab.Page.Locator("html")).ToHaveAttributeAsync("lang", "de");
        await Expect(lab.Button("Dateien")).ToBeVisibleAsync();
        string german = await lab.Sentence.InnerTextAsync();
        await lab.Page.Locator(".lab-top select").Last.SelectOptionAsync("en");
        await Expect(lab.Button("Files")).ToBeVisibleAsync();
        await Expect(lab.Sentence).Not.ToHaveTextAsync(german);
        lab.WasQuiet();
    }

    private async Task<LabPage> Open(string state, Look? look = null) =>
        await LabPage.Open(browser, await course.Served("lab/index.html#" + state), look);

    [GeneratedRegex("[#&]step=([0-9]+)")]
    private static partial Regex StepIn();
}
