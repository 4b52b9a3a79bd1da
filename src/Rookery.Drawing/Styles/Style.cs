using System.Collections.Immutable;

namespace Rookery.Drawing;

/// <summary>Turns what marks stand for into paint.</summary>
/// <remarks>
/// <see cref="Light"/> uses the colour-blind-safe set of M. Okabe and K. Ito, "Color Universal Design" (2002, revised
/// 2008), in an assignment of our own that docs/drawing.md explains; <see cref="Grey"/> prints in one ink;
/// <see cref="Dark"/> has the same hues for dark pages and dark rooms. In all of them
/// fills that lie side by side differ in lightness, in hatch or by a label: colour alone never carries a meaning.
/// </remarks>
public sealed class Style
{
    /// <summary>Number of worker paints; workers beyond repeat them, told apart by their number labels.</summary>
    public const int WorkerPaints = 8;

    private readonly ImmutableArray<Paint> _roles;
    private readonly ImmutableArray<Paint> _workers;
    private readonly ImmutableArray<Colour> _workerLines;
    private readonly ImmutableArray<Colour> _workerTexts;
    private readonly Colour _scaleLow;
    private readonly Colour _scaleHigh;

    private Style(string name, StyleTable table)
    {
        Name = name;
        _roles = table.Roles;
        _workers = table.Workers;
        _workerLines = [.. _workers.Select(StrongEnough)];
        _workerTexts = [.. _workers.Select(paint => paint.TextColour)];
        (_scaleLow, _scaleHigh) = (table.ScaleLow, table.ScaleHigh);
    }

    /// <summary>Colours on white: for projectors and screens.</summary>
    public static Style Light { get; } = new("light", StyleTable.Light);

    /// <summary>Greys and hatches on white: for print in one ink.</summary>
    public static Style Grey { get; } = new("grey", StyleTable.Grey);

    /// <summary>Colours on near black: for dark pages, and for projectors in dark rooms.</summary>
    public static Style Dark { get; } = new("dark", StyleTable.Dark);

    /// <summary><c>light</c>, <c>grey</c> or <c>dark</c>.</summary>
    public string Name { get; }

    /// <summary>How an area is filled. <see cref="Role.None"/> is not painted and may not be asked for.</summary>
    public Paint FillOf(Ink ink) => ink.Role switch
    {
        Role.Worker => _workers[ink.Number % WorkerPaints],
        Role.Scale => new(_scaleLow.Towards(_scaleHigh, ink.Shade)),
        _ => _roles[(int)ink.Role],
    };

    /// <summary>
    /// Colour of a line or of text on paper: the ground of the fill; a worker's, where it is too faint for a line,
    /// moved towards black or white until its contrast against the paper is 3.
    /// </summary>
    /// <remarks>Source: Web Content Accessibility Guidelines 2.2 (W3C), success criterion 1.4.11.</remarks>
    public Colour LineOf(Ink ink) =>
        ink.Role == Role.Worker ? _workerLines[ink.Number % WorkerPaints] : FillOf(ink).Ground;

    private Colour StrongEnough(Paint worker)
    {
        var paper = _roles[(int)Role.Paper];
        var colour = worker.Ground;
        while (Colour.Contrast(colour, paper.Ground) < 3)
            colour = colour.Towards(paper.TextColour, 0.05);
        return colour;
    }

    /// <summary>Colour of a text: its own on paper, black or white on a fill.</summary>
    public Colour TextOf(Text text) => text.Over.Role switch
    {
        Role.None => LineOf(text.Ink),
        Role.Worker => _workerTexts[text.Over.Number % WorkerPaints],
        _ => FillOf(text.Over).TextColour,
    };
}
