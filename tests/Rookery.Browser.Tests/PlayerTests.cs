using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Rookery.Browser.Tests.Browsing;
using Rookery.Browser.Tests.Courses;
using static Microsoft.Playwright.Assertions;

namespace Rookery.Browser.Tests;

/// <summary>The player of a recorded run: by mouse, by keyboard alone, and by ear.</summary>
/// <param name="browser">The browser.</param>
/// <param name="course">The course.</param>
public sealed partial class PlayerTests(SharedBrowser browser, DemoCourse course)
{
    private const string Page = "03-a-deque-each.html";

    private static readonly DateTime Noon = new(2026, 1, 1, 12, 0, 0, DateTimeKind.Utc);

    [Fact]
    public async Task Buttons_Pressed_StepJumpAndGoToMoments()
    {
        await using Visit visit = await Open();
        ILocator player = Player(visit);

        await Press(player, "most queued");
        int at = await Step(player);
        await Expect(Named(player, "most queued")).ToHaveAttributeAsync("aria-pressed", "true");
        await Press(player, "Next ▶");
        Assert.Equal(at + 1, await Step(player));
        await Expect(Named(player, "most queued")).ToHaveAttributeAsync("aria-pressed", "false");
        await Press(player, "◀ Back");
        Assert.Equal(at, await Step(player));

        await player.GetByLabel("Kind of event to jump to").SelectOptionAsync("steal");
        await Press(player, "Previous of this kind");
        int steal = await Step(player);
        Assert.InRange(steal, 1, at - 1);
        await Expect(player.Locator(".rk-says")).ToContainTextAsync(" from worker ");
        await Press(player, "Previous of this kind");
        Assert.InRange(await Step(player), 1, steal - 1);
        await Press(player, "Next of this kind");
        Assert.Equal(steal, await Step(player));
        await Press(player, "first steal");
        await Expect(Named(player, "Previous of this kind")).ToBeDisabledAsync();
        Assert.Empty(visit.Troubles);
    }

    [Fact]
    public async Task Keyboard_Alone_DoesAllThatAPlayerDoes()
    {
        await using Visit visit = await Open();
        ILocator player = Player(visit);
        IKeyboard keys = visit.Page.Keyboard;
        for (int tabs = 0; !await HasFocus(player.Locator(".rk-stage")); tabs++)
        {
            Assert.True(tabs < 20, "The player is not reached from the top by the tabulator key.");
            await keys.PressAsync("Tab");
        }

        await keys.PressAsync("Home");
        int first = await Step(player);
        await Expect(Named(player, "◀ Back")).ToBeDisabledAsync();
        await keys.PressAsync("ArrowRight");
        await keys.PressAsync("ArrowRight");
        Assert.Equal(first + 2, await Step(player));
        await keys.PressAsync("ArrowLeft");
        Assert.Equal(first + 1, await Step(player));
        await keys.PressAsync("End");
        int last = await Step(player);
        await Expect(Named(player, "Next ▶")).ToBeDisabledAsync();
        Assert.InRange(last, first + 100, int.MaxValue);
        await keys.PressAsync("p");
        Assert.InRange(await Step(player), first + 1, last - 1);

        // Every control has its turn, each with a name, and the way out leads on.
        var names = new List<string>();
        for (int tabs = 0; tabs < 20 && await HasFocus(player); tabs++)
        {
            names.Add(await visit.Page.EvaluateAsync<string>(
                "() => document.activeElement.ariaLabel ?? document.activeElement.textContent"));
            await keys.PressAsync("Tab");
        }

        Assert.DoesNotContain("", names);
        Assert.Superset(
            new HashSet<string> { "Play", "◀ Back", "Next ▶", "Step", "Speed", "Previous of this kind", "last steal" },
            names.ToHashSet());
        Assert.False(await HasFocus(player));
        Assert.Empty(visit.Troubles);
    }

    // Time is the test's own, so that nothing here waits or hurries.
    [Fact]
    public async Task Play_BySpace_GoesOnAndIsSilentUntilItStops()
    {
        await using Visit visit = await browser.Open(
            await course.Served(Page), Look.Notebook, page => page.Clock.InstallAsync(new() { TimeDate = Noon }));
        await visit.Page.Clock.PauseAtAsync(Noon.AddHours(1));
        ILocator player = Player(visit);
        await player.Locator(".rk-stage").FocusAsync();
        await visit.Page.Keyboard.PressAsync("Home");
        int first = await Step(player);
        await visit.Page.Clock.RunForAsync(5_000);
        Assert.Equal(first, await Step(player));

        await visit.Page.Keyboard.PressAsync("Space");
        await Expect(player.Locator(".rk-says")).ToHaveAttributeAsync("aria-live", "off");
        await visit.Page.Clock.RunForAsync(2_100);
        Assert.Equal(first + 4, await Step(player));
        await visit.Page.Keyboard.PressAsync("Space");
        await Expect(player.Locator(".rk-says")).ToHaveAttributeAsync("aria-live", "polite");
        await visit.Page.Clock.RunForAsync(2_100);
        Assert.Equal(first + 4, await Step(player));
        Assert.Empty(visit.Troubles);
    }

    [Fact]
    public async Task Narration_OfEachStep_IsInTheLiveRegionAndDescribesThePicture()
    {
        await using Visit visit = await Open();
        ILocator player = Player(visit);
        ILocator says = player.Locator(".rk-says");
        await Expect(says).ToHaveAttributeAsync("aria-live", "polite");
        await Expect(player.GetByRole(AriaRole.Img)).ToHaveAccessibleDescriptionAsync(new Regex("^After "));

        var heard = new HashSet<string>();
        await player.Locator(".rk-stage").FocusAsync();
        for (int i = 0; i < 10; i++)
        {
            heard.Add(await says.InnerTextAsync());
            await visit.Page.Keyboard.PressAsync("ArrowRight");
        }

        Assert.Equal(10, heard.Count);
        Assert.All(heard, sentence => Assert.Matches(@"[Ww]orker \d|fib\(\d+\)", sentence));
    }

    [Fact]
    public async Task Figures_ToAReaderOfScreens_AreImagesWithNameAndDescription()
    {
        await using Visit visit = await Open();
        IReadOnlyList<ILocator> figures = await visit.Page.Locator("figure svg:visible").AllAsync();

        Assert.NotEmpty(figures);
        foreach (ILocator figure in figures)
        {
            await Expect(figure).ToHaveRoleAsync(AriaRole.Img);
            await Expect(figure).ToHaveAccessibleNameAsync(new Regex(".{40,}"));
        }
    }

    [Fact]
    public async Task Motion_Unwanted_NothingMovesByItself()
    {
        await using Visit visit = await browser.Open(
            await course.Served(Page), Look.Notebook with { Motion = ReducedMotion.Reduce });
        await visit.MeetPlayers();

        Assert.Equal("auto", await visit.Page.EvaluateAsync<string>(
            "() => getComputedStyle(document.documentElement).scrollBehavior"));
        await Press(Player(visit), "Next ▶");
        Assert.Equal(0, await visit.Page.EvaluateAsync<int>("() => document.getAnimations().length"));
    }

    [Fact]
    public async Task Player_OnAPhone_ShowsThePictureDrawnForIt()
    {
        await using Visit visit = await browser.Open(await course.Served(Page), Look.Phone);
        await visit.MeetPlayers();

        Assert.Equal(600, await Player(visit).Locator(".rk-stage svg").EvaluateAsync<int>(
            "one => one.viewBox.baseVal.width"));
        Assert.Contains(
            visit.Requests, address => address.EndsWith("rk-exhibit-1-narrow.js", StringComparison.Ordinal));
        Assert.DoesNotContain(visit.Requests, address => address.EndsWith("-wide.js", StringComparison.Ordinal));
    }

    // A phone turned there and back, or a window printed: the drawing for the narrow one comes when nobody wants it.
    [Fact]
    public async Task Window_NarrowOnlyWhileItsDrawingLoads_KeepsTheWideOne()
    {
        await using Visit visit = await Open();
        var isAsked = new TaskCompletionSource<IRoute>();
        await visit.Page.RouteAsync("**/rk-exhibit-1-narrow.js", isAsked.SetResult);
        await visit.Page.SetViewportSizeAsync(Look.Phone.Width, Look.Phone.Height);
        IRoute held = await isAsked.Task;
        await visit.Page.SetViewportSizeAsync(Look.Notebook.Width, Look.Notebook.Height);
        await Expect(visit.Page.Locator(".rk-keys").First).ToBeVisibleAsync();
        Task loaded = visit.Page.WaitForFunctionAsync("""
            () => performance.getEntriesByType("resource").some(one => one.name.endsWith("rk-exhibit-1-narrow.js"))
            """);
        await held.ContinueAsync();
        await loaded;
        await visit.Page.EvaluateAsync("() => new Promise(done => setTimeout(done))");

        Assert.Equal(1200, await Player(visit).Locator(".rk-stage svg").EvaluateAsync<int>(
            "one => one.viewBox.baseVal.width"));
    }

    [Fact]
    public async Task Execution_OfACheckBlock_IsSteppedThroughLineByLine()
    {
        await using Visit visit = await browser.Open(
            await course.Served("10-a-deques-few-lines.html"), Look.Notebook);
        await visit.MeetPlayers();
        ILocator player = Player(visit), says = player.Locator(".rk-says");
        await Expect(says).ToContainTextAsync("Nothing has happened yet.");
        await Expect(Named(player, "◀ Back")).ToBeDisabledAsync();

        // Two steps, each in words and in a picture of its own.
        ILocator stage = player.Locator(".rk-stage");
        string picture = await stage.InnerHTMLAsync();
        await Press(player, "Next ▶");
        await Expect(says).ToContainTextAsync(" begins ");
        await Expect(player.Locator(".rk-clock")).ToContainTextAsync("After 1 of ");
        Assert.NotEqual(picture, await stage.InnerHTMLAsync());
        await stage.FocusAsync();
        await visit.Page.Keyboard.PressAsync("ArrowRight");
        await Expect(player.Locator(".rk-clock")).ToContainTextAsync("After 2 of ");

        // To the next step of the thief, who alone is asked for; at the end stands what the execution shows.
        await player.GetByLabel("Kind of event to jump to").SelectOptionAsync(
            new SelectOptionValue { Label = "step of thief" });
        await visit.Page.Keyboard.PressAsync("Home");
        await Press(player, "Next of this kind");
        await Expect(says).ToContainTextAsync("thief ");
        await visit.Page.Keyboard.PressAsync("End");
        await stage.FocusAsync();
        await visit.Page.Keyboard.PressAsync("End");
        await Expect(Named(player, "Next ▶")).ToBeDisabledAsync();
        await Expect(says).ToContainTextAsync("was put in once and taken out by");
        await Expect(stage.Locator("svg")).ToBeVisibleAsync();
        Assert.Empty(visit.Troubles);
    }

    private async Task<Visit> Open()
    {
        Visit visit = await browser.Open(await course.Served(Page), Look.Notebook);
        await visit.MeetPlayers();
        return visit;
    }

    private static ILocator Player(Visit visit) => visit.Page.Locator(".rk-player").First;

    private static ILocator Named(ILocator player, string name) =>
        player.GetByRole(AriaRole.Button, new() { Name = name, Exact = true });

    private static Task Press(ILocator player, string name) => Named(player, name).ClickAsync();

    private static Task<bool> HasFocus(ILocator one) =>
        one.EvaluateAsync<bool>("one => one.contains(document.activeElement)");

    private static async Task<int> Step(ILocator player) =>
        int.Parse((await ClockText(player)).Replace(",", "", StringComparison.Ordinal),
            System.Globalization.CultureInfo.InvariantCulture);

    private static async Task<string> ClockText(ILocator player) =>
        Count().Match(await player.Locator(".rk-clock").InnerTextAsync()).Groups[1].Value;

    [GeneratedRegex("^After ([0-9,]+) of ")]
    private static partial Regex Count();
}
