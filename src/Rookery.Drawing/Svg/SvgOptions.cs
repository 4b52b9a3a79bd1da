namespace Rookery.Drawing;

/// <summary>How a scene is written as SVG.</summary>
public sealed record SvgOptions
{
    /// <summary>Paints; <see cref="Style.Light"/> by default.</summary>
    public Style Style { get; init; } = Style.Light;

    /// <summary>Put before each id, so that several figures can stand in one page; empty by default.</summary>
    public string IdPrefix { get; init; } = "";

    /// <summary>Put before each target to make a link, such as <c>lab.html#</c>; null by default: no links.</summary>
    /// <remarks>Without it targets are written as <c>data-target</c>, for a page's own use.</remarks>
    public string? LinkBase { get; init; }
}
