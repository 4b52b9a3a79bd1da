namespace Rookery.Lessons.Pages;

/// <summary>The page that lists the lessons of a course.</summary>
internal static class IndexPage
{
    /// <summary>Makes it.</summary>
    public static string Of(Course course, bool isLive, bool hasLab)
    {
        var html = new Html();
        html.Raw("<main id=\"rk-main\" class=\"rk-index\">\n");
        html.Line($"<header class=\"rk-title\"><h1>{course.Title}</h1>");
        int minutes = course.Lessons.Sum(entry => entry.Lesson.Front.Minutes);
        string count = course.Lessons.Length == 1 ? "1 lesson" : $"{course.Lessons.Length} lessons";
        string time = minutes > 0 ? " · " + PageShell.Minutes(minutes) : "";
        html.Line($"<p class=\"rk-facts\">{count}{time}</p></header>");
        if (course.Introduction is { } text)
            html.Raw(LessonPage.TextOf(text, course));
        if (hasLab)
        {
            html.Line($"<p class=\"rk-start\"><a href=\"{PageContext.Lab}\">Open the lab</a>");
            html.Raw("to step through any program, to change it, and to ask what if.</p>\n");
        }

        html.Raw("<ol class=\"rk-lessons\">\n");
        foreach (CourseEntry entry in course.Lessons)
        {
            html.Line($"<li><a href=\"{entry.Page}\"><strong>{entry.Lesson.Front.Title}</strong>");
            if (entry.Lesson.Front.Summary.Length > 0)
                html.Line($"<span>{entry.Lesson.Front.Summary}</span>");
            if (entry.Lesson.Front.Minutes > 0)
                html.Line($"<small>{PageShell.Minutes(entry.Lesson.Front.Minutes)}</small>");
            html.Raw("</a></li>\n");
        }

        html.Raw("</ol>\n</main>\n<footer class=\"rk-foot\">");
        html.Raw("<p>Every figure and number was computed by Rookery.</p></footer>\n");
        string summary = course.Introduction?.Front.Summary ?? "";
        return PageShell.Of(course.Title, summary, html.ToString(), isLive);
    }
}
