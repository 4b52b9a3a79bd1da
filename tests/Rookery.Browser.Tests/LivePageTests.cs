using System.Diagnostics;
using System.Globalization;
using Rookery.Browser.Tests.Browsing;
using Rookery.Browser.Tests.Courses;
using Rookery.Testing;
using static Microsoft.Playwright.Assertions;

namespace Rookery.Browser.Tests;

/// <summary>A lesson in the browser beside the editor: what is saved is seen, errors too.</summary>
/// <param name="browser">The browser.</param>
public sealed class LivePageTests(SharedBrowser browser)
{
    private const string Lesson = """
        ---
        title: Beside the editor
        ---

        The first word.

        ```exhibit
        program: count.fj
        machine: unit
        stop: first steal
        ```

        There were {= steals } steals.
        """;

    [Fact]
    public async Task SavedText_IsSeenWithoutTouchingTheBrowser_ErrorsToo()
    {
        using var folder = new TempFolder();
        await using LiveSite site = await Serve(folder);
        await using Visit visit = await browser.Open(site.Address, Look.Notebook);
        await visit.MeetPlayers();

        for (int i = 0; i < 3; i++)
        {
            string word = string.Create(CultureInfo.InvariantCulture, $"edited {i} times");
            long start = Stopwatch.GetTimestamp();
            folder.Put("lesson.md", Lesson.Replace("first word", word, StringComparison.Ordinal));
            await Expect(visit.Page.Locator("main")).ToContainTextAsync(word);
            TestContext.Current.TestOutputHelper?.WriteLine(
                $"Seen {Stopwatch.GetElapsedTime(start).TotalMilliseconds:0} ms after saving.");
        }

        folder.Put("lesson.md", Lesson.Replace("count.fj", "cuont.fj", StringComparison.Ordinal));
        await Expect(visit.Page.Locator(".rk-problem")).ToContainTextAsync("Did you mean count.fj?");
        Assert.Empty(await Accessibility.Violations(visit));

        folder.Put("lesson.md", Lesson);
        await Expect(visit.Page.Locator("main")).ToContainTextAsync("The first word");
        await visit.MeetPlayers();
        Assert.Empty(visit.Troubles);
    }

    // The page has been sent, and listens only now: what was saved in between must not be taken for what it shows.
    [Fact]
    public async Task SavedText_BeforeThePageListens_IsSeenAllTheSame()
    {
        using var folder = new TempFolder();
        await using LiveSite site = await Serve(folder);
        await using Visit visit = await browser.Open(site.Address, Look.Notebook);
        await visit.MeetPlayers();
        var saved = new TaskCompletionSource();
        await visit.Page.RouteAsync("**/live", async route =>
        {
            await saved.Task;
            await route.ContinueAsync();
        });
        await visit.Page.ReloadAsync(new() { WaitUntil = Microsoft.Playwright.WaitUntilState.DOMContentLoaded });
        folder.Put("lesson.md", Lesson.Replace("first word", "second word", StringComparison.Ordinal));
        using var client = new HttpClient();
        while (!(await client.GetStringAsync(site.Address, TestContext.Current.CancellationToken))
            .Contains("second word", StringComparison.Ordinal))
            await Task.Delay(50, TestContext.Current.CancellationToken);
        saved.SetResult();
        await Expect(visit.Page.Locator("main")).ToContainTextAsync("second word");
    }

    private static async Task<LiveSite> Serve(TempFolder folder)
    {
        folder.Put("count.fj", await File.ReadAllTextAsync(RepositoryFile.At("lessons/fibonacci.fj"),
            TestContext.Current.CancellationToken));
        return await LiveSite.Of(folder.Put("lesson.md", Lesson));
    }
}
