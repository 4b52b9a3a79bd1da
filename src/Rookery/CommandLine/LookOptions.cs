using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;
using Rookery.Drawing;
using Rookery.Figures;
using Rookery.Notation;

namespace Rookery.CommandLine;

/// <summary>The options that say how figures look.</summary>
internal sealed class LookOptions
{
    private const double SideMax = 20_000;

    private readonly Option<string?> _size =
        OptionValues.Text("--size", "WIDTHxHEIGHT", "Size in pixels; 1600x900 by default, a slide.");

    private readonly Option<string?> _scale =
        OptionValues.Text("--scale", "NUMBER", "Pixels of a PNG for each of these; 2 by default.");

    private readonly Option<string?> _style =
        OptionValues.Text("--style", "light|grey", "Colours for projectors, or greys and hatches for print.");

    private readonly Option<string?> _text =
        OptionValues.Text("--text", "NUMBER", "Size of text, 0.5 to 2; 1 by default, for the back of a room.");

    /// <summary>As help shows them.</summary>
    public OptionGroup Group => new("How figures look", [_size, _scale, _style, _text]);

    /// <summary>What was asked for.</summary>
    /// <exception cref="InputException">A value is none, or out of range.</exception>
    public FigureLook Look(ParseResult parsed)
    {
        var frame = new Frame();
        if (parsed.GetValue(_size) is { } sides)
            frame = Sized(frame, sides);
        if (parsed.GetValue(_text) is { } text)
        {
            double textScale = Number(text, 0.5, 2) ?? throw new InputException(AppErrors.BadTextScale(text));
            frame = frame with { TextScale = textScale };
        }

        double scale = 2;
        if (parsed.GetValue(_scale) is { } asked)
            scale = Number(asked, 0.1, 10) ?? throw new InputException(AppErrors.BadScale(asked));
        ImmutableArray<Style> styles = [Style.Light, Style.Grey];
        string name = parsed.GetValue(_style) ?? styles[0].Name;
        Style style = styles.FirstOrDefault(one => one.Name == name)
            ?? throw new InputException(AppErrors.UnknownWord("--style", name, styles.Select(one => one.Name)));
        return new(frame, style, scale);
    }

    private static Frame Sized(Frame frame, string text)
    {
        string[] sides = text.Split('x');
        if (sides.Length != 2 || Number(sides[0], Frame.SideMin, SideMax) is not { } width
            || Number(sides[1], Frame.SideMin, SideMax) is not { } height)
            throw new InputException(AppErrors.BadSize(text, Frame.SideMin, SideMax));
        return frame with { Width = width, Height = height };
    }

    private static double? Number(string text, double least, double most) =>
        double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double value)
        && value >= least && value <= most
            ? value
            : null;
}
