using System.Globalization;

namespace Rookery.Lessons.Pages;

/// <summary>What every page has around its content.</summary>
internal static class PageShell
{
    /// <summary>
    /// What a page may do: its own style sheet, script, pictures and fonts, and nothing from elsewhere, inside or out.
    /// </summary>
    /// <remarks>
    /// <c>file:</c> stands beside <c>'self'</c> since some browsers give a page that was opened by a double click no
    /// origin to be the same as; from a web server it permits nothing.
    /// </remarks>
    private const string Policy = "default-src 'none'; style-src 'self' file:; script-src 'self' file:; "
        + "img-src 'self' file:; font-src 'self' file:; base-uri 'none'; form-action 'none'";

    /// <summary>A whole page.</summary>
    /// <param name="title">What the browser's tab says.</param>
    /// <param name="description">A sentence on it.</param>
    /// <param name="content">Inside of the page: HTML.</param>
    /// <param name="isLive">Whether it is served and shows each change by itself.</param>
    public static string Of(string title, string description, string content, bool isLive)
    {
        string policy = isLive ? Policy + "; connect-src 'self'" : Policy;
        var html = new Html();
        html.Raw("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n");
        html.Line($"<meta http-equiv=\"Content-Security-Policy\" content=\"{policy}\">");
        html.Raw("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n");
        html.Raw("<meta name=\"referrer\" content=\"no-referrer\">\n");
        html.Raw("<meta name=\"color-scheme\" content=\"light dark\">\n");
        html.Line($"<title>{title}</title>");
        if (description.Length > 0)
            html.Line($"<meta name=\"description\" content=\"{description}\">");
        html.Raw("<link rel=\"icon\" href=\"icon.svg\" type=\"image/svg+xml\">\n");
        html.Raw("<link rel=\"stylesheet\" href=\"rookery.css\">\n<script src=\"rookery.js\" defer></script>\n");
        if (isLive)
            html.Raw("<script src=\"live.js\" defer></script>\n");
        return html.Raw("</head>\n<body>\n").Raw(content).Raw("</body>\n</html>\n").ToString();
    }

    /// <summary>Minutes as a reader says them.</summary>
    public static string Minutes(int minutes) => minutes == 1
        ? "1 minute"
        : string.Create(CultureInfo.InvariantCulture, $"{minutes} minutes");
}
