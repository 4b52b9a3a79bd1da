using Rookery.Browser.Tests.Browsing;
using Rookery.Browser.Tests.Courses;

namespace Rookery.Browser.Tests;

/// <summary>Every page of the demo course, as readers with different windows and rooms see it.</summary>
/// <param name="browser">The browser.</param>
/// <param name="course">The course.</param>
public sealed class CoursePageTests(SharedBrowser browser, DemoCourse course)
{
    public static TheoryData<string, Look> Views() => new(
        from page in DemoCourse.Pages
        from look in (Look[])[Look.Notebook, Look.Notebook.Dark(), Look.Phone, Look.Phone.Dark()]
        select (page, look));

    public static TheoryData<string> Pages() => [.. DemoCourse.Pages];

    [Theory]
    [MemberData(nameof(Views), DisableDiscoveryEnumeration = true)]
    public async Task Page_Seen_IsQuietAccessibleAndWhole(string page, Look look)
    {
        await using Visit visit = await browser.Open(await course.Served(page), look);
        await visit.MeetPlayers();

        Assert.Empty(visit.Troubles);
        Assert.Empty(await Accessibility.Violations(visit));
        Assert.Equal(0, await visit.Page.EvaluateAsync<int>("""
            () => document.documentElement.scrollWidth - document.documentElement.clientWidth
            """));
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
