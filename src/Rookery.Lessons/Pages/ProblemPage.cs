using System.Collections.Immutable;

namespace Rookery.Lessons.Pages;

/// <summary>What a served page says while its lesson cannot be built.</summary>
public static class ProblemPage
{
    /// <summary>Makes it.</summary>
    /// <param name="title">What was asked for.</param>
    /// <param name="problems">What is wrong.</param>
    public static string Of(string title, ImmutableArray<Problem> problems)
    {
        var html = new Html();
        html.Raw("<main id=\"rk-main\" class=\"rk-problems\">\n");
        html.Line($"<header class=\"rk-title\"><h1>{title}</h1>");
        html.Raw("<p class=\"rk-facts\">This cannot be shown yet. The page comes back by itself when you save the file."
            + "</p></header>\n");
        foreach (Problem problem in problems)
            html.Line($"<pre class=\"rk-problem\">{problem.ToString()}</pre>");
        html.Raw("</main>\n");
        return PageShell.Of(title, "", html.ToString(), isLive: true);
    }
}
