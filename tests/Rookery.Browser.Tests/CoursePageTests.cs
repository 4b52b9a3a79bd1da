using Microsoft.Playwright;
using Rookery.Browser.Tests.Browsing;
using Rookery.Browser.Tests.Courses;

namespace Rookery.Browser.Tests;

/// <summary>Every page of the demo course, as readers with different windows and rooms see it.</summary>
/// <param name="browser">The browser.</param>
/// <param name="course">The course.</param>
public sealed class CoursePageTests(SharedBrowser browser, DemoCourse course)
{
    public static TheoryData<string> Pages => [.. DemoCourse.Pages];

    // One visit for all looks, since a page of many figures takes its time to load.
    [Theory]
    [MemberData(nameof(Pages))]
    public async Task Page_OnNotebookAndPhoneLightAndDark_IsQuietAccessibleAndWhole(string page)
    {
        await using Visit visit = await browser.Open(await course.Served(page), Look.Notebook);
        await visit.MeetPlayers();

        Assert.Empty(await Accessibility.Violations(visit));
        await HasNothingCutOrPale(visit);
        await Darken(visit, ColorScheme.Dark);
        Assert.Empty(await Accessibility.ContrastViolations(visit));
        await HasNothingCutOrPale(visit);

        await visit.Page.SetViewportSizeAsync(Look.Phone.Width, Look.Phone.Height);
        Assert.Empty(await Accessibility.Violations(visit));
        await HasNothingCutOrPale(visit);
        await Darken(visit, ColorScheme.Light);
        Assert.Empty(await Accessibility.ContrastViolations(visit));
        Assert.Empty(visit.Troubles);
    }

    private static Task Darken(Visit visit, ColorScheme theme) =>
        visit.Page.EmulateMediaAsync(new() { ColorScheme = theme });

    private static async Task HasNothingCutOrPale(Visit visit)
    {
        Assert.Equal(0, await visit.Page.EvaluateAsync<int>(
            "() => document.documentElement.scrollWidth - document.documentElement.clientWidth"));
        Assert.Empty(await visit.Page.EvaluateAsync<string[]>(CutLabels));
        Assert.Empty(await Accessibility.PaleLabels(visit));
    }

    /// <summary>Labels of figures that are seen and reach over the edge of their figure.</summary>
    private const string CutLabels = """
        () => [...document.querySelectorAll("svg text")].filter(label => {
            const text = label.getBoundingClientRect(), figure = label.closest("svg").getBoundingClientRect();
            return text.width > 0 && (text.left < figure.left - 1 || text.right > figure.right + 1
                || text.top < figure.top - 1 || text.bottom > figure.bottom + 1);
        }).map(label => label.textContent)
        """;
}
