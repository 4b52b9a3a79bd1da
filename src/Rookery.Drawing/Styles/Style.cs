using System.Collections.Immutable;

namespace Rookery.Drawing;

/// <summary>Turns what marks stand for into paint.</summary>
/// <remarks>
/// <see cref="Light"/> uses the colour-blind-safe set of M. Okabe and K. Ito, "Color Universal Design" (2002, revised
/// 2008), in an assignment of our own that docs/drawing.md explains; <see cref="Grey"/> prints in one ink. In both,
/// fills that lie side by side differ in lightness, in hatch or by a label: colour alone never carries a meaning.
/// </remarks>
public sealed class Style
{
    /// <summary>Number of worker paints; workers beyond repeat them, told apart by their number labels.</summary>
    public const int WorkerPaints = 8;

    private readonly ImmutableArray<Paint> _roles;
    private readonly ImmutableArray<Paint> _workers;
    private readonly Colour _scaleLow;
    private readonly Colour _scaleHigh;

    private Style(string name, StyleTable table)
    {
        Name = name;
        _roles = table.Roles;
        _workers = table.Workers;
        (_scaleLow, _scaleHigh) = (table.ScaleLow, table.ScaleHigh);
    }

    /// <summary>Colours on white: for projectors and screens.</summary>
    public static Style Light { get; } = new("light", StyleTable.Light);

    /// <summary>Greys and hatches on white: for print in one ink.</summary>
    public static Style Grey { get; } = new("grey", StyleTable.Grey);

    /// <summary><c>light</c> or <c>grey</c>.</summary>
    public string Name { get; }

    /// <summary>How an area is filled. <see cref="Role.None"/> is not painted and may not be asked for.</summary>
    public Paint FillOf(Ink ink) => ink.Role switch
    {
        Role.Worker => _workers[ink.Number % WorkerPaints],
        Role.Scale => new(_scaleLow.Towards(_scaleHigh, ink.Shade)),
        _ => _roles[(int)ink.Role],
    };

    /// <summary>
    /// Colour of a line or of text on paper: the ground of the fill; a worker's, where too light for a line, darkened
    /// until its contrast against white is 3.
    /// </summary>
    /// <remarks>Source: Web Content Accessibility Guidelines 2.2 (W3C), success criterion 1.4.11.</remarks>
    public Colour LineOf(Ink ink)
    {
        var colour = FillOf(ink).Ground;
        while (ink.Role == Role.Worker && Colour.Contrast(colour, Colour.White) < 3)
            colour = colour.Towards(Colour.Black, 0.05);
        return colour;
    }

    /// <summary>Colour of a text: its own on paper, black or white on a fill.</summary>
    public Colour TextOf(Text text) =>
        text.Over.Role == Role.None ? LineOf(text.Ink) : FillOf(text.Over).TextColour;
}
