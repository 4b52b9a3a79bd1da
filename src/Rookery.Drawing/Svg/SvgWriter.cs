using System.Globalization;
using System.Text;
using Rookery.Notation;

namespace Rookery.Drawing;

/// <summary>Writes a scene as one self-contained SVG document: no script, no style sheet, nothing loaded.</summary>
/// <remarks>
/// SVG 1.1 elements, which SVG 2 readers take as well. Title and description are those of the scene, for screen
/// readers. Numbers have at most two decimals in the invariant form, ids are those of the scene's groups, so the same
/// scene gives the same bytes everywhere.
/// </remarks>
public sealed class SvgWriter
{
    private const string Fonts = FontWidths.Family + ", sans-serif";

    private readonly StringBuilder _out = new(1 << 14);
    private readonly SvgOptions _options;
    private readonly HashSet<string> _ids = new(StringComparer.Ordinal);
    private readonly SortedDictionary<string, Paint> _hatches = new(StringComparer.Ordinal);

    private readonly SvgPieces? _kept;
    private readonly Dictionary<Group, List<(string Name, Paint Paint)>> _found =
        new(ReferenceEqualityComparer.Instance);

    // The ids of the group that is written to be kept; null otherwise.
    private List<string>? _pieceIds;
    private bool _isInLink;

    private SvgWriter(SvgOptions options, SvgPieces? kept) => (_options, _kept) = (options, kept);

    /// <summary>The scene as SVG text; lines end with a line feed.</summary>
    /// <param name="scene">The scene.</param>
    /// <param name="options">Null for the defaults.</param>
    /// <param name="kept">Kept by callers that write scene after scene; null to write all anew.</param>
    /// <exception cref="InvariantException">An id appears twice or a number is not finite.</exception>
    public static string Write(Scene scene, SvgOptions? options = null, SvgPieces? kept = null)
    {
        var writer = new SvgWriter(options ?? new(), kept);
        kept?.Begin(writer._options);
        writer.WriteScene(scene);
        return writer._out.ToString();
    }

    private void WriteScene(Scene scene)
    {
        var (title, description) = (IdOf("title"), IdOf("description"));
        var (width, height) = (Number(scene.Width), Number(scene.Height));
        _out.Append(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{width}\"")
            .Append(CultureInfo.InvariantCulture, $" height=\"{height}\" viewBox=\"0 0 {width} {height}\" role=\"img\"")
            .Append(CultureInfo.InvariantCulture, $" aria-labelledby=\"{title} {description}\"")
            .Append(CultureInfo.InvariantCulture, $" font-family=\"{Fonts}\">\n");
        _out.Append(CultureInfo.InvariantCulture, $"<title id=\"{title}\">{SvgText.Escape(scene.Title)}</title>\n");
        _out.Append(
            CultureInfo.InvariantCulture,
            $"<desc id=\"{description}\">{SvgText.Escape(scene.Description)}</desc>\n");
        WriteHatches(scene);
        WriteMark(new Box(new(0, 0, scene.Width, scene.Height), Role.Paper));
        foreach (var mark in scene.Marks)
        {
            if (_kept is not null && mark is Group group)
                WritePiece(group, _kept);
            else
                WriteMark(mark);
        }

        _out.Append("</svg>\n");
    }

    private void WritePiece(Group group, SvgPieces kept)
    {
        if (kept.Find(group) is { } piece)
        {
            foreach (var id in piece.Ids)
                IdOf(id);
            _out.Append(piece.Written);
            kept.Keep(group, piece);
            return;
        }

        var start = _out.Length;
        List<string> ids = [];
        _pieceIds = ids;
        WriteMark(group);
        _pieceIds = null;
        kept.Keep(group, new(_out.ToString(start, _out.Length - start), ids, _found[group]));
    }

    private void WriteHatches(Scene scene)
    {
        foreach (var mark in scene.Marks)
        {
            List<(string Name, Paint Paint)> found = [];
            if (mark is Group group && _kept?.Find(group) is { } piece)
                found.AddRange(piece.Hatches);
            else
                FindHatches(mark, found);
            if (mark is Group whole && _kept is not null)
                _found[whole] = found;
            foreach (var (name, paint) in found)
                _hatches.TryAdd(name, paint);
        }

        if (_hatches.Count == 0)
            return;
        _out.Append("<defs>\n");
        foreach (var (name, paint) in _hatches)
            _out.Append(SvgPatterns.Element(IdOf(name), paint)).Append('\n');
        _out.Append("</defs>\n");
    }

    private void FindHatches(Mark mark, List<(string Name, Paint Paint)> found)
    {
        if (mark is Group group)
        {
            foreach (var inner in group.Marks)
                FindHatches(inner, found);
            return;
        }

        var fill = FillOf(mark);
        if (fill.Role == Role.None)
            return;
        var paint = _options.Style.FillOf(fill);
        if (paint.Hatch != Hatch.None)
            found.Add((HatchName(paint), paint));
    }

    private static Ink FillOf(Mark mark) => mark switch
    {
        Box box => box.Fill,
        Disc disc => disc.Fill,
        Outline outline => outline.Fill,
        _ => default,
    };

    private void WriteMark(Mark mark)
    {
        switch (mark)
        {
            case Group group:
                WriteGroup(group);
                break;
            case Box box:
                WriteBox(box);
                break;
            case Disc disc:
                _out.Append("<circle");
                Numbers(("cx", disc.X), ("cy", disc.Y), ("r", disc.Radius));
                Fill(disc.Fill);
                Stroke(disc.Edge, disc.EdgeWidth, Dash.Solid);
                _out.Append("/>\n");
                break;
            case Rule rule:
                _out.Append("<line");
                Numbers(("x1", rule.X1), ("y1", rule.Y1), ("x2", rule.X2), ("y2", rule.Y2));
                Stroke(rule.Ink, rule.Width, rule.Dash);
                _out.Append("/>\n");
                break;
            case Outline outline:
                SvgText.AppendPath(_out.Append("<path d=\""), outline.Steps);
                _out.Append('"');
                Fill(outline.Fill);
                Stroke(outline.Edge, outline.EdgeWidth, outline.Dash);
                _out.Append("/>\n");
                break;
            case Text text:
                WriteText(text);
                break;
        }
    }

    private void WriteGroup(Group group)
    {
        // A link within a link is no SVG: the outer one leads, the inner keeps its target for a page's own use.
        var isLink = group.Target.Length > 0 && _options.LinkBase is not null && !_isInLink;
        _isInLink |= isLink;
        if (isLink)
            Attribute("<a", "href", _options.LinkBase + group.Target).Append('>');
        Attribute("<g", "id", IdOf(group.Id));
        if (group.Target.Length > 0 && !isLink)
            Attribute("", "data-target", group.Target);
        _out.Append(">\n");
        if (group.Label.Length > 0)
            _out.Append("<title>").Append(SvgText.Escape(group.Label)).Append("</title>\n");
        foreach (var mark in group.Marks)
            WriteMark(mark);
        _isInLink &= !isLink;
        _out.Append(isLink ? "</g></a>\n" : "</g>\n");
    }

    private void WriteBox(Box box)
    {
        _out.Append("<rect");
        Numbers(("x", box.Place.X), ("y", box.Place.Y), ("width", box.Place.Width), ("height", box.Place.Height));
        if (box.Radius > 0)
            Numbers(("rx", box.Radius));
        Fill(box.Fill);
        Stroke(box.Edge, box.EdgeWidth, Dash.Solid);
        _out.Append("/>\n");
    }

    private void WriteText(Text text)
    {
        _out.Append("<text");
        Numbers(("x", text.X), ("y", text.Y), ("font-size", text.Size));
        if (text.IsBold)
            _out.Append(" font-weight=\"600\"");
        if (text.Anchor != Anchor.Start)
            Attribute("", "text-anchor", text.Anchor == Anchor.Middle ? "middle" : "end");
        if (text.IsUpright)
            Attribute("", "transform", $"rotate(-90 {Number(text.X)} {Number(text.Y)})");
        Append("fill", _options.Style.TextOf(text));
        _out.Append('>').Append(SvgText.Escape(text.Content)).Append("</text>\n");
    }

    private void Fill(Ink ink)
    {
        if (ink.Role == Role.None)
        {
            _out.Append(" fill=\"none\"");
            return;
        }

        var paint = _options.Style.FillOf(ink);
        if (paint.Hatch == Hatch.None)
            Append("fill", paint.Ground);
        else
            Attribute("", "fill", $"url(#{_options.IdPrefix}{HatchName(paint)})");
    }

    private void Append(string name, Colour colour)
    {
        const string digits = "0123456789ABCDEF";
        _out.Append(' ').Append(name).Append("=\"#");
        foreach (var part in (ReadOnlySpan<byte>)[colour.Red, colour.Green, colour.Blue])
            _out.Append(digits[part >> 4]).Append(digits[part & 15]);
        _out.Append('"');
    }

    private void Stroke(Ink ink, double width, Dash dash)
    {
        if (ink.Role == Role.None)
            return;
        Append("stroke", _options.Style.LineOf(ink));
        Numbers(("stroke-width", width));
        if (dash == Dash.Dashed)
            _out.Append(" stroke-dasharray=\"10 6\"");
        if (dash == Dash.Dotted)
            _out.Append(" stroke-dasharray=\"3 4\"");
    }

    private void Numbers(params ReadOnlySpan<(string Name, double Value)> attributes)
    {
        foreach (var (name, value) in attributes)
            SvgText.AppendNumber(_out.Append(' ').Append(name).Append("=\""), value).Append('"');
    }

    private StringBuilder Attribute(string before, string name, string value) =>
        _out.Append(before).Append(' ').Append(name).Append("=\"").Append(SvgText.Escape(value)).Append('"');

    private string IdOf(string id)
    {
        Invariant.Holds(_ids.Add(id), $"The id {id} appears twice in a scene.");
        _pieceIds?.Add(id);
        return _options.IdPrefix + id;
    }

    private static string HatchName(Paint paint)
    {
        var (ground, lines) = (paint.Ground.ToString()[1..], paint.HatchColour.ToString()[1..]);
        return $"hatch-{paint.Hatch.ToString().ToLowerInvariant()}-{ground}-{lines}";
    }

    private static string Number(double value) => SvgText.Number(value);
}
