using System.Collections.Immutable;
using AngleSharp.Dom;
using AngleSharp.Html;
using AngleSharp.Html.Dom;
using Ganss.Xss;

namespace Rookery.Lessons.Cleaning;

/// <summary>Cleans the HTML of a lesson's text: what stays can neither run, nor load, nor imitate the page.</summary>
/// <remarks>
/// A list of what is permitted, by a well-kept library; everything else goes. Then every address is looked at: links
/// may
/// lead to the web (nobody follows them but the reader) or to files of the lesson, pictures are files of the lesson.
/// </remarks>
internal static class HtmlCleaner
{
    /// <summary>Elements inside one another: more are refused, since writers of HTML recurse.</summary>
    private const int DepthMax = 200;

    private static readonly ImmutableHashSet<string> Void = ["area", "base", "br", "col", "embed", "hr", "img", "input",
        "link", "meta", "param", "source", "track", "wbr"];

    private static readonly HtmlSanitizerOptions Options = new()
    {
        AllowedTags = new HashSet<string>(StringComparer.OrdinalIgnoreCase)
        {
            "p", "h1", "h2", "h3", "h4", "h5", "h6", "blockquote", "ul", "ol", "li", "pre", "code", "em", "strong",
                "del",
            "ins", "s", "sub", "sup", "kbd", "abbr", "mark", "small", "b", "i", "u", "br", "hr", "table", "caption",
            "thead", "tbody", "tfoot", "tr", "th", "td", "dl", "dt", "dd", "details", "summary", "div", "span", "a",
            "img", "figure", "figcaption", "cite", "q", "samp", "var", "section", "aside",
        },
        AllowedAttributes = new HashSet<string>(StringComparer.OrdinalIgnoreCase)
        {
            "href", "title", "src", "alt", "width", "height", "id", "class", "start", "reversed", "colspan", "rowspan",
            "scope", "lang", "dir", "open",
        },
        AllowedSchemes = new HashSet<string>(StringComparer.OrdinalIgnoreCase) { "http", "https", "mailto" },
        UriAttributes = new HashSet<string>(StringComparer.OrdinalIgnoreCase) { "href", "src" },
        AllowedCssProperties = new HashSet<string>(),
        AllowedAtRules = new HashSet<AngleSharp.Css.Dom.CssRuleType>(),
        AllowDataAttributes = false,
    };

    /// <summary>Whether HTML nests deeper than we read.</summary>
    /// <remarks>Counts tags that open and were not closed, so it is never too small for what a parser makes of
    /// it.</remarks>
    public static bool IsTooDeep(string html)
    {
        int depth = 0;
        for (int at = html.IndexOf('<', StringComparison.Ordinal); at >= 0; at = html.IndexOf('<', at + 1))
        {
            if (at + 1 >= html.Length)
                return false;
            if (html[at + 1] == '/')
            {
                depth = Math.Max(0, depth - 1);
            }
            else if (char.IsAsciiLetter(html[at + 1]))
            {
                int end = at + 1;
                while (end < html.Length && char.IsAsciiLetterOrDigit(html[end]))
                    end++;
                if (!Void.Contains(html[(at + 1)..end].ToLowerInvariant()) && ++depth > DepthMax)
                    return true;
            }
        }

        return false;
    }

    /// <summary>Cleans.</summary>
    /// <param name="html">HTML of a text, not too deep.</param>
    /// <param name="addressOf">From an address in the text to that in the page; null for one that may not stay.</param>
    public static string Clean(string html, Func<string, bool, string?> addressOf)
    {
        IHtmlDocument document = new HtmlSanitizer(Options).SanitizeDom(html);
        var ids = new HashSet<string>(StringComparer.Ordinal);
        foreach (IElement element in document.Body!.QuerySelectorAll("*").ToArray())
        {
            CleanClass(element);
            string? id = element.GetAttribute("id");
            if (id is not null && (id.StartsWith("rk-", StringComparison.Ordinal) || !ids.Add(id)))
                element.RemoveAttribute("id");
            if (element.LocalName == "a")
                CleanLink(element, addressOf);
            else if (element.LocalName == "img")
                CleanImage(element, addressOf);
            else if (element.LocalName == "table")
                Scrolls(document, element);
            else if (element.LocalName == "pre")
                element.SetAttribute("tabindex", "0");
            else if (element.LocalName == "th" && element.TextContent.Trim().Length == 0)
                IsNoHeader(document, element);
        }

        using var text = new StringWriter();
        foreach (INode node in document.Body.ChildNodes)
            node.ToHtml(text, HtmlMarkupFormatter.Instance);
        return text.ToString();
    }

    // Names of styles belong to the page; only what the reader of Markdown itself writes stays.
    private static void CleanClass(IElement element)
    {
        string[] kept = [.. element.ClassList.Where(name =>
            name is "number" or "footnotes" or "footnote-ref" or "footnote-back-ref"
            || name.StartsWith("language-", StringComparison.Ordinal))];
        if (kept.Length > 0)
            element.SetAttribute("class", string.Join(' ', kept));
        else
            element.RemoveAttribute("class");
    }

    private static void CleanLink(IElement link, Func<string, bool, string?> addressOf)
    {
        if (link.GetAttribute("href") is not { } href)
            return;
        if (addressOf(href, false) is { } address)
            link.SetAttribute("href", address);
        else
            link.RemoveAttribute("href");
        if (href.Contains(':', StringComparison.Ordinal))
            link.SetAttribute("rel", "noopener noreferrer");
    }

    private static void CleanImage(IElement image, Func<string, bool, string?> addressOf)
    {
        if (image.GetAttribute("src") is { } src && addressOf(src, true) is { } address)
        {
            image.SetAttribute("src", address);
            image.SetAttribute("loading", "lazy");
            if (!image.HasAttribute("alt"))
                image.SetAttribute("alt", "");
        }
        else
        {
            image.Remove();
        }
    }

    // An empty corner of a table heads nothing; as a header it would be read aloud as one.
    private static void IsNoHeader(IHtmlDocument document, IElement header)
    {
        IElement cell = document.CreateElement("td");
        foreach (IAttr attribute in header.Attributes.Where(one => one.Name is "colspan" or "rowspan"))
            cell.SetAttribute(attribute.Name, attribute.Value);
        header.Replace(cell);
    }

    // A table wider than a phone scrolls by itself, and not the page: who has no mouse scrolls it once it has focus, as
    // with a preformatted text above.
    private static void Scrolls(IHtmlDocument document, IElement table)
    {
        IElement box = document.CreateElement("div");
        box.SetAttribute("class", "rk-scroll");
        box.SetAttribute("tabindex", "0");
        table.Replace(box);
        box.AppendChild(table);
    }
}
