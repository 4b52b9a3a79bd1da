using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;

namespace Rookery.Browser.Tests.Browsing;

/// <summary>Has a page judged by axe-core, whose rules follow the Web Content Accessibility Guidelines 2.2.</summary>
internal static class Accessibility
{
    /// <summary>What axe finds: the rule, the place, what is wrong there. All of its rules.</summary>
    public static Task<string[]> Violations(Visit visit) => Violations(visit, new());

    /// <summary>What axe finds about the contrast of text: all that another theme can change.</summary>
    public static Task<string[]> ContrastViolations(Visit visit) =>
        Violations(visit, new() { RunOnly = new() { Type = "rule", Values = ["color-contrast"] } });

    /// <summary>Labels of figures that stand out too little from what they are drawn on.</summary>
    /// <remarks>
    /// Web Content Accessibility Guidelines 2.2, success criterion 1.4.3, its own relative luminance: at
    /// least 4.5 to 1, and 3 to 1 from 24 CSS pixels on, or from 18.66 in bold. A label on a hatch is left out.
    /// </remarks>
    public static Task<string[]> PaleLabels(Visit visit) => visit.Page.EvaluateAsync<string[]>("""
        () => {
            const parts = paint => (paint.match(/[\d.]+/g) ?? []).map(Number);
            const light = ([r, g, b]) => [[r, 0.2126], [g, 0.7152], [b, 0.0722]].reduce((sum, [value, weight]) => {
                const part = value / 255;
                return sum + weight * (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4);
            }, 0);
            const paper = getComputedStyle(document.documentElement).backgroundColor;
            const pale = [];
            for (const label of document.querySelectorAll("figure svg text, .rk-stage svg text")) {
                let box = label.getBoundingClientRect();
                if (box.width === 0) continue;
                if (box.top < 0 || box.bottom > innerHeight) {
                    label.scrollIntoView({ block: "start", behavior: "instant" });
                    box = label.getBoundingClientRect();
                }
                const under = document.elementsFromPoint(box.x + box.width / 2, box.y + box.height / 2).find(one =>
                    one.ownerSVGElement && one.localName !== "text" && (one.getAttribute("fill") ?? "none") !== "none");
                const ground = under ? getComputedStyle(under).fill : paper;
                if (ground.startsWith("url")) continue;
                const style = getComputedStyle(label);
                const [a, b] = [light(parts(style.fill)), light(parts(ground))];
                const ratio = (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
                const size = parseFloat(style.fontSize) * box.width / Math.max(1, label.getBBox().width);
                const isLarge = size >= 24 || (size >= 18.66 && Number(style.fontWeight) >= 600);
                if (ratio < (isLarge ? 3 : 4.5))
                    pale.push(`${label.textContent}: ${ratio.toFixed(2)}, ${style.fill} on ${ground}`);
            }
            return pale;
        }
        """);

    private static async Task<string[]> Violations(Visit visit, AxeRunOptions options)
    {
        await visit.Page.EvaluateAsync(HollowFigures);
        AxeResult result = await visit.Page.RunAxe(options);
        await visit.Page.EvaluateAsync(FillFigures);
        Assert.NotEmpty(result.Passes);
        return
        [
            .. from rule in result.Violations
               from node in rule.Nodes
               let why = string.Join("; ", node.Any.Select(one => one.Message))
               select $"{rule.Id}: {node.Target}: {node.Html}: {why}",
        ];
    }

    // A figure is one image to those who hear it: what it is drawn of has no role of its own. Axe would walk through
    // thousands of marks all the same, and ten times as long; their contrast is looked at by PaleLabels.
    private const string HollowFigures = """
        () => {
            window.figureInsides = [...document.querySelectorAll("svg")].map(figure => {
                const marks = [...figure.children].filter(one => one.localName !== "title" && one.localName !== "desc");
                marks.forEach(one => one.remove());
                return [figure, marks];
            });
        }
        """;

    private const string FillFigures = """
        () => window.figureInsides.forEach(([figure, marks]) => figure.append(...marks))
        """;
}
