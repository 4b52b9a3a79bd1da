using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using Rookery.Lessons.Blocks;
using Rookery.Lessons.Cleaning;
using Rookery.Lessons.Markdown;
using Rookery.Lessons.Reading;

namespace Rookery.Lessons.Pages;

/// <summary>The page of one lesson.</summary>
internal static class LessonPage
{
    /// <summary>Makes it.</summary>
    /// <param name="entry">The lesson in its course.</param>
    /// <param name="results">What its blocks came to, in their order.</param>
    /// <param name="course">The course; null for a lesson on its own.</param>
    /// <param name="isLive">Whether it is served and shows each change by itself.</param>
    /// <param name="problems">Gets all that keeps it from being published.</param>
    /// <param name="hasLab">Whether the course comes with the lab.</param>
    public static string Of(
        CourseEntry entry, ImmutableArray<BlockResult> results, Course? course, bool isLive,
        ImmutableArray<Problem>.Builder problems, bool hasLab = false)
    {
        Lesson lesson = entry.Lesson;
        var numbers = new LessonNumbers(lesson, results);
        problems.AddRange(numbers.Misses());
        var page = new PageContext(entry.Slug, hasLab);
        string body = BodyOf(lesson, results, numbers, page, course, problems);
        var html = new Html();
        WriteTop(html, entry, course, hasLab);
        html.Raw("<main id=\"rk-main\">\n");
        WriteHeader(html, lesson.Front);
        html.Raw(body).Raw("</main>\n");
        WriteFooter(html, entry, course);
        return PageShell.Of(lesson.Front.Title, lesson.Front.Summary, html.ToString(), isLive);
    }

    /// <summary>A text without live parts, cleaned: the introduction of a course.</summary>
    public static string TextOf(Lesson lesson, Course course) =>
        BodyOf(lesson, [], new(lesson, []), new PageContext(""), course, ImmutableArray.CreateBuilder<Problem>());

    private static string BodyOf(
        Lesson lesson, ImmutableArray<BlockResult> results, LessonNumbers numbers, PageContext page, Course? course,
        ImmutableArray<Problem>.Builder problems)
    {
        // A text that holds its own hash cannot be written, so no lesson can forge a mark.
        string mark = "rk" + Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(lesson.Source.Text)));
        var renderer = new BodyRenderer(lesson.BlocksByFence, numbers.Printed(problems), mark);
        string dirty = renderer.Render(lesson.Document);
        if (HtmlCleaner.IsTooDeep(dirty))
        {
            problems.Add(new(lesson.Source, LessonErrors.TooDeep()));
            return "";
        }

        string clean = HtmlCleaner.Clean(dirty, (address, isImage) =>
            AddressOf(address, isImage, lesson, page, course));
        var body = new StringBuilder(clean);
        for (int i = 0; i < results.Length; i++)
        {
            LessonBlock block = lesson.Blocks[i];
            body.Replace(
                BodyRenderer.MarkOf(mark, block.Place.Number), "\n" + BlockHtml.Of(page, block, results[i]));
        }

        return body.ToString();
    }

    private static string? AddressOf(string address, bool isImage, Lesson lesson, PageContext page, Course? course)
    {
        if (isImage)
        {
            string image = Uri.UnescapeDataString(address);
            return lesson.Images.Contains(image) ? $"{page.FolderOf}/{FileNames.ToAddress(image)}" : null;
        }

        if (address.StartsWith('#') || address.Contains(':', StringComparison.Ordinal))
            return address;
        int hash = address.IndexOf('#', StringComparison.Ordinal);
        string file = Uri.UnescapeDataString(hash < 0 ? address : address[..hash]);
        return course?.PageOf(file) is { } other ? other + (hash < 0 ? "" : address[hash..]) : null;
    }

    private static void WriteTop(Html html, CourseEntry entry, Course? course, bool hasLab)
    {
        html.Raw("<a class=\"rk-skip\" href=\"#rk-main\">To the lesson</a>\n");
        html.Raw("<nav class=\"rk-top\" aria-label=\"Course\">\n");
        if (course is not null)
            html.Line($"<a class=\"rk-home\" href=\"index.html\">{course.Title}</a>");
        html.Raw("<span class=\"rk-also\">");
        if (hasLab)
            html.Line($"<a href=\"{PageContext.Lab}\">Lab</a>");
        html.Line($"<a href=\"slides/{FileNames.ToAddress(entry.Slug)}.pptx\">Slides</a></span></nav>");
    }

    private static void WriteHeader(Html html, FrontMatter front)
    {
        html.Line($"<header class=\"rk-title\"><h1>{front.Title}</h1>");
        string[] facts = [.. new[] { front.Audience, front.Minutes > 0 ? PageShell.Minutes(front.Minutes) : "" }
            .Where(fact => fact.Length > 0)];
        if (facts.Length > 0)
            html.Line($"<p class=\"rk-facts\">{string.Join(" · ", facts)}</p>");
        if (front.Objectives.Length > 0)
        {
            html.Raw("<div class=\"rk-objectives\"><p>Afterwards you can</p><ul>\n");
            foreach (string objective in front.Objectives)
                html.Line($"<li>{objective}</li>");
            html.Raw("</ul></div>\n");
        }

        html.Raw("</header>\n");
    }

    private static void WriteLink(Html html, string rel, string before, CourseEntry entry, string after) =>
        html.Line($"<a rel=\"{rel}\" href=\"{entry.Page}\">{before}{entry.Lesson.Front.Title}{after}</a>");

    private static void WriteFooter(Html html, CourseEntry entry, Course? course)
    {
        html.Raw("<footer class=\"rk-foot\">\n");
        if (course is not null)
        {
            int at = course.Lessons.IndexOf(entry);
            html.Raw("<nav aria-label=\"Lessons\">\n");
            if (at > 0)
                WriteLink(html, "prev", "← ", course.Lessons[at - 1], "");
            if (at >= 0 && at + 1 < course.Lessons.Length)
                WriteLink(html, "next", "", course.Lessons[at + 1], " →");
            html.Raw("</nav>\n");
        }

        html.Raw("<p>Every figure and number of this page was computed by Rookery. The runs are of a model: it leaves "
            + "out caches and memory bandwidth, the distance between cores, and all that varies from one operation "
                + "to the "
            + "next.</p>\n</footer>\n");
    }
}
