using System.Globalization;

namespace Rookery.Drawing;

/// <summary>Hatches as SVG patterns, in tiles that join without a seam.</summary>
internal static class SvgPatterns
{
    /// <summary>The <c>pattern</c> element of a hatched paint.</summary>
    public static string Element(string id, Paint paint)
    {
        var (size, drawn) = paint.Hatch switch
        {
            Hatch.Rising => (10, Lines(paint, "M-2 2L2 -2M0 10L10 0M8 12L12 8")),
            Hatch.Falling => (10, Lines(paint, "M-2 8L2 12M0 0L10 10M8 -2L12 2")),
            Hatch.Level => (8, Lines(paint, "M0 4L8 4")),
            Hatch.Upright => (8, Lines(paint, "M4 0L4 8")),
            Hatch.Dots => (8, $"<circle cx=\"4\" cy=\"4\" r=\"1.6\" fill=\"{paint.HatchColour}\"/>"),
            Hatch.None => (8, ""),
        };
        return string.Create(
            CultureInfo.InvariantCulture,
            $"<pattern id=\"{id}\" width=\"{size}\" height=\"{size}\" patternUnits=\"userSpaceOnUse\">")
            + string.Create(
                CultureInfo.InvariantCulture,
                $"<rect width=\"{size}\" height=\"{size}\" fill=\"{paint.Ground}\"/>{drawn}</pattern>");
    }

    private static string Lines(Paint paint, string path) =>
        $"<path d=\"{path}\" stroke=\"{paint.HatchColour}\" stroke-width=\"1.6\" fill=\"none\"/>";
}
