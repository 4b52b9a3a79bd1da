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
    public async Task Page_LightDarkAndOnAPhone_IsQuietAccessibleAndWhole(string page)
    {
        await using Visit visit = await browser.Open(await course.Served(page), Look.Notebook);
        await visit.MeetPlayers();

        Assert.Empty(await Accessibility.Violations(visit));
        await HasNothingCut(visit);
        Assert.Empty(await Accessibility.PaleLabels(visit));
        await Darken(visit);
        Assert.Empty(await Accessibility.ContrastViolations(visit));
        Assert.Empty(await Accessibility.PaleLabels(visit));

        // A window's width changes no colour: the phone, whose figures are drawn anew, is looked at in one theme.
        await visit.Page.SetViewportSizeAsync(Look.Phone.Width, Look.Phone.Height);
        Assert.Empty(await Accessibility.Violations(visit));
        await HasNothingCut(visit);
        Assert.Empty(await Accessibility.PaleLabels(visit));
        Assert.Empty(visit.Troubles);
    }

    private static Task Darken(Visit visit) => visit.Page.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Dark });

    private static async Task HasNothingCut(Visit visit)
    {
        Assert.Equal(0, await visit.Page.EvaluateAsync<int>(
            "() => document.documentElement.scrollWidth - document.documentElement.clientWidth"));
        Assert.Empty(await visit.Page.EvaluateAsync<string[]>(CutLabels));
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
