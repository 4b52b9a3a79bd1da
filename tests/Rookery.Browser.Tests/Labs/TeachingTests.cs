using Microsoft.Playwright;
using Rookery.Browser.Tests.Browsing;
using Rookery.Browser.Tests.Courses;
using Rookery.Testing;
using static Microsoft.Playwright.Assertions;

namespace Rookery.Browser.Tests.Labs;

/// <summary>The lab in front of a class: full screen, large type, a dark room, a blank screen, files by drop.</summary>
/// <param name="browser">The browser.</param>
/// <param name="course">The course.</param>
public sealed class TeachingTests(SharedBrowser browser, DemoCourse course)
{
    // Two threads of a runtime that is none of ours, and noted no option of its own.
    private const string Foreign = """
        # rookery-trace: 1
        # program: sum of squares
        # maker: a thread pool
        # workers: 2
        # time-unit: ns
        # looks: some
        time,worker,kind,task,other,line,label
        0,0,begin,0,-1,0,sum
        10,0,work,0,-1,0,
        400,0,fork,0,1,0,upper half
        420,0,work,0,-1,0,
        900,1,steal,1,0,0,
        900,1,begin,1,0,0,
        950,1,work,1,-1,0,
        2000,0,join-wait,0,1,0,
        2600,1,end,1,0,0,
        2600,1,stop,-1,-1,0,
        2700,0,join-pass,0,-1,0,
        2700,0,end,0,-1,0,
        2700,0,stop,-1,-1,0,
        """;

    [Fact]
    public async Task FullScreen_ByButtonAndByKey_ComesAndGoes()
    {
        await using LabPage lab = await Open();
        await lab.Button("Full screen").ClickAsync();
        await lab.Page.WaitForFunctionAsync("() => document.fullscreenElement === document.documentElement");
        await Expect(lab.Picture.Locator("svg")).ToBeVisibleAsync();
        await lab.Page.Locator("body").FocusAsync();
        await lab.Press("f");
        await lab.Page.WaitForFunctionAsync("() => document.fullscreenElement === null");
        await lab.Press("f");
        await lab.Page.WaitForFunctionAsync("() => document.fullscreenElement !== null");
        lab.WasQuiet();
    }

    [Theory]
    [InlineData("Stage", ".lab-sentence")]
    [InlineData("Studies", ".study-answers td")]
    [InlineData("Deques", ".deque-says p[aria-live]")]
    public async Task Hall_ByItsKey_MakesTheTypeLargerInEveryRoom(string room, string part)
    {
        await using LabPage lab = await Open(Look.Hall);
        await lab.Enter(room);
        if (room == "Studies")
        {
            await lab.Page.GetByLabel("Seeds for each combination").FillAsync("2");
            await lab.Button("Run").ClickAsync();
        }
        else if (room == "Deques")
        {
            await lab.Page.Locator(".deque-choices select").First.SelectOptionAsync(
                "deques/broken/growable-last-item-not-contested.dq");
            await lab.Button("Check").ClickAsync();
        }

        await Expect(lab.Page.Locator(part).First).ToBeVisibleAsync();
        double before = await SizeOf(lab, part);
        await lab.Page.Locator("body").FocusAsync();
        await lab.Button("Hall").ClickAsync();
        await Expect(lab.Button("Hall")).ToHaveAttributeAsync("aria-pressed", "true");
        double hall = await SizeOf(lab, part);
        Assert.True(hall >= before * 1.2, $"{part}: {before} px, in the hall {hall} px.");

        // A tenth of a line of the slide that nobody at the back can read is one too many.
        Assert.True(hall >= 20, $"{part}: {hall} px in the hall.");
        Assert.Equal(0, await lab.Page.EvaluateAsync<int>(
            "() => document.documentElement.scrollWidth - document.documentElement.clientWidth"));
        lab.WasQuiet();
    }

    [Theory]
    [InlineData(1920, 1080, "en")]
    [InlineData(1920, 1080, "de")]
    [InlineData(1366, 768, "en")]
    [InlineData(1366, 768, "de")]
    [InlineData(1280, 800, "de")]
    public async Task Hall_OnAnyProjector_ShowsEveryWorkerAndKeepsTheRoomsAtHand(int width, int height, string language)
    {
        await using LabPage lab = await LabPage.Open(
            browser,
            await course.Served(
                $"lab/index.html#demo=fibonacci.fj&setup=machine=unit+workers=4&step=120&lang={language}"),
            new Look(width, height));
        await lab.Page.Locator("body").FocusAsync();
        await lab.Press("h");
        await Expect(lab.Page.Locator("html")).ToHaveClassAsync("lab-hall");
        for (int worker = 0; worker < 4; worker++)
            await Expect(lab.Picture.Locator($"#s-worker-{worker}")).ToBeVisibleAsync();
        string[] beside = await lab.Page.EvaluateAsync<string[]>("""
            () => [...document.querySelectorAll(".lab-top button, .lab-controls button, .lab-controls select")]
                .filter(one => one.offsetParent !== null)
                .filter(one => {
                    const box = one.getBoundingClientRect();
                    const bar = one.closest(".lab-top, .lab-controls").getBoundingClientRect();
                    return box.right > innerWidth || box.height * 1.6 < bar.height;
                })
                .map(one => one.textContent)
            """);
        Assert.Empty(beside);
        await lab.Page.Locator(".lab-rooms button").Last.ClickAsync();
        await Expect(lab.Page.Locator(".deque-room")).ToBeVisibleAsync();
        lab.WasQuiet();
    }

    [Fact]
    public async Task Line_FarDownInAnAlgorithm_IsChosenWithoutScrollingThePage()
    {
        await using LabPage lab = await Open();
        await lab.Enter("Deques");
        ILocator lines = lab.Page.Locator(".deque-line");
        await lines.Last.ScrollIntoViewIfNeededAsync();
        await lines.Last.ClickAsync();
        await Expect(lab.Page.Locator(".deque-chosen")).ToBeVisibleAsync();
        Assert.Equal(0, await lab.Page.EvaluateAsync<double>("""
            () => {
                scrollTo(0, 400);
                return document.documentElement.scrollTop + document.body.scrollTop;
            }
            """));
        lab.WasQuiet();
    }

    [Fact]
    public async Task Theme_ByItsButton_ChangesPageAndFigures()
    {
        await using LabPage lab = await Open();
        const string ground = "() => getComputedStyle(document.documentElement).backgroundColor";
        string light = await lab.Page.EvaluateAsync<string>(ground);
        string picture = await lab.Picture.InnerHTMLAsync();
        await lab.Button("Dark or light").ClickAsync();
        await lab.Page.WaitForFunctionAsync(
            "light => getComputedStyle(document.documentElement).backgroundColor !== light", light);
        await lab.Page.WaitForFunctionAsync(
            "picture => document.querySelector('#lab-stage-picture').innerHTML !== picture", picture);
        Assert.Empty(await lab.Violations(ColorScheme.Dark));
        lab.WasQuiet();
    }

    [Fact]
    public async Task Screen_Blanked_ShowsNothingUntilTheNextKey()
    {
        await using LabPage lab = await Open();
        await lab.Page.Locator("body").FocusAsync();
        await lab.Press("b");
        await Expect(lab.Sentence).ToBeHiddenAsync();
        await lab.Press("ArrowRight");
        await Expect(lab.Sentence).ToBeVisibleAsync();
        await Expect(lab.Clock).ToContainTextAsync("Step 0 of");
        await lab.Press("ArrowRight");
        await Expect(lab.Clock).ToContainTextAsync("Step 1 of");
        lab.WasQuiet();
    }

    [Fact]
    public async Task Trace_OfAnotherRuntime_DroppedOnThePage_IsAuditedAndSteppedThrough()
    {
        await using LabPage lab = await Open();
        await Drop(lab, "pool.csv", System.Text.Encoding.UTF8.GetBytes(Foreign.ReplaceLineEndings("\n")));
        await Expect(lab.Page.GetByText("found the trace lawful")).ToBeVisibleAsync();
        await Expect(lab.Clock).ToContainTextAsync("of 13");
        await lab.Page.Locator("body").FocusAsync();
        await lab.Press("Home");
        await lab.Press("s");
        await Expect(lab.Sentence).ToContainTextAsync("Worker 1 takes upper half from worker 0");
        lab.WasQuiet();
    }

    [Theory]
    [InlineData("real/strip-grain-64.parquet")]
    [InlineData("first-count.fj")]
    [InlineData("deques/two-locks.dq")]
    public async Task File_OfEachKind_DroppedOnThePage_IsShown(string file)
    {
        await using LabPage lab = await Open();
        await Drop(lab, Path.GetFileName(file), await File.ReadAllBytesAsync(
            RepositoryFile.At("lessons/" + file), TestContext.Current.CancellationToken));
        if (file.EndsWith(".dq", StringComparison.Ordinal))
        {
            await Expect(lab.Page.Locator(".deque-listing")).ToContainTextAsync("lock");
            await Expect(lab.Page.Locator(".deque-room")).ToBeVisibleAsync();
        }
        else if (file.EndsWith(".fj", StringComparison.Ordinal))
        {
            await Expect(lab.Page.Locator(".lab-listing")).ToContainTextAsync("count(0, 200)");
        }
        else
        {
            await Expect(lab.Page.GetByText("found the trace lawful")).ToBeVisibleAsync();
        }

        lab.WasQuiet();
    }

    [Fact]
    public async Task Reader_WhoUsedEverything_LeavesNothingBehind()
    {
        await using LabPage lab = await Open();
        await lab.Page.Locator(".lab-top select").Last.SelectOptionAsync("de");
        await lab.Button("Dunkel oder hell").ClickAsync();
        await lab.Enter("Studien");
        await lab.Enter("Deques");
        await lab.Button("Hörsaal").ClickAsync();
        string kept = await lab.Page.EvaluateAsync<string>("""
            async () => [
                localStorage.length, sessionStorage.length, document.cookie.length,
                (await indexedDB.databases()).length,
            ].join(" ")
            """);
        Assert.Equal("0 0 0 0", kept);
        Assert.Empty(await lab.Page.Context.CookiesAsync());
        lab.WasQuiet();
    }

    private static Task<double> SizeOf(LabPage lab, string part) => lab.Page.Locator(part).First.EvaluateAsync<double>(
        "one => parseFloat(getComputedStyle(one).fontSize)");

    // As a browser tells a page of files that were let go over it.
    private static async Task Drop(LabPage lab, string name, byte[] bytes) => await lab.Page.EvaluateAsync(
        """
        ([name, text]) => {
            const files = new DataTransfer();
            files.items.add(new File([Uint8Array.from(atob(text), sign => sign.charCodeAt(0))], name));
            document.querySelector("#lab-stage-picture").dispatchEvent(
                new DragEvent("drop", { bubbles: true, cancelable: true, dataTransfer: files }));
        }
        """,
        new[] { name, Convert.ToBase64String(bytes) });

    private async Task<LabPage> Open(Look? look = null) => await LabPage.Open(
        browser, await course.Served("lab/index.html#demo=fibonacci.fj&setup=machine=unit+workers=3&step=0"), look);
}
