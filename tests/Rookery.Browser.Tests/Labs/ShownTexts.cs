using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Microsoft.Playwright;
using Rookery.Testing;

namespace Rookery.Browser.Tests.Labs;

/// <summary>Finds what a German page says in English.</summary>
/// <remarks>
/// Looked at are all texts and what only those hear who hear the page: labels, titles, descriptions of figures. Names
/// are left out (options, code, what is marked as English): they are the same in every language.
/// </remarks>
internal static partial class ShownTexts
{
    /// <summary>Texts that are English: those of the English resources that have another text in German, and
    /// sentences with English words.</summary>
    public static async Task<string[]> English(IPage page)
    {
        Dictionary<string, string> english = Resources("en"), german = Resources("de");
        Regex[] known =
        [
            .. english.Where(one => one.Value.Split(' ').Length > 2 && german[one.Key] != one.Value)
                .Select(one => new Regex($"^{Place().Replace(Regex.Escape(one.Value), ".*")}$")),
        ];
        string[] shown = await page.EvaluateAsync<string[]>("""
            () => {
                const names = "script, style, code, pre, textarea, kbd, option, #lab-needs-server, [lang=en]";
                const texts = [];
                const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
                for (let node = walker.nextNode(); node; node = walker.nextNode()) {
                    if (!node.parentElement.closest(names)) texts.push(node.data);
                }
                const spoken = ["aria-label", "title", "placeholder", "aria-valuetext", "aria-description", "alt"];
                for (const one of document.body.querySelectorAll("*")) {
                    for (const name of spoken) texts.push(one.closest(names) ? "" : one.getAttribute(name) ?? "");
                }
                return [...new Set(texts.map(text => text.trim()).filter(text => text.includes(" ")))];
            }
            """);
        return [.. shown.Where(text => Words().IsMatch(text) || known.Any(one => one.IsMatch(text)))];
    }

    private static Dictionary<string, string> Resources(string code) =>
        XDocument.Load(RepositoryFile.At(string.Create(
            CultureInfo.InvariantCulture, $"src/Rookery.Lab/Texts/Texts.{code}.resx"))).Root!.Elements("data")
            .ToDictionary(one => one.Attribute("name")!.Value, one => one.Element("value")!.Value);

    [GeneratedRegex(
        @"(?<![\w-])(the|of|with|that|which|from|is|are|has|have|been|and|its|whose|when|then|other|each|reads|writes"
        + @"|begins|returns|takes|finds|runs?|steps?|seeds|interval|speed-up|memory)(?![\w-])")]
    private static partial Regex Words();

    [GeneratedRegex(@"\\\{\d+}")]
    private static partial Regex Place();
}
