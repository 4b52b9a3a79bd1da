namespace Rookery.Drawing;

/// <summary>Size and heading of a figure: what all views share.</summary>
public sealed record Frame
{
    /// <summary>The least width and height at which the views still find room.</summary>
    public const double SideMin = 320;

    /// <summary>Width in pixels, at least <see cref="SideMin"/>; 1,600 by default, a slide of 16 by 9.</summary>
    public double Width { get; init; } = 1600;

    /// <summary>Height in pixels, at least <see cref="SideMin"/>; 900 by default.</summary>
    public double Height { get; init; } = 900;

    /// <summary>
    /// Times the sizes of text, 0.5 to 2; 1 by default: no text below 18 pixels, which a slide of 1,600 pixels shows
    /// legibly at the back of a lecture room. Take 0.7 for a figure of 900 pixels in a page.
    /// </summary>
    public double TextScale { get; init; } = 1;

    /// <summary>Whether title and subtitle are drawn; true by default. The SVG has its title in any case.</summary>
    public bool ShowHeading { get; init; } = true;

    /// <summary>A title of one's own; empty by default: the view makes one.</summary>
    public string Title { get; init; } = "";

    /// <summary>In which language the figure speaks; <see cref="DrawingWords.English"/> by default.</summary>
    public DrawingWords Words { get; init; } = DrawingWords.English;

    internal void Check()
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(Width, SideMin);
        ArgumentOutOfRangeException.ThrowIfLessThan(Height, SideMin);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(Width, 100_000);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(Height, 100_000);
        ArgumentOutOfRangeException.ThrowIfLessThan(TextScale, 0.5);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(TextScale, 2);
    }
}
