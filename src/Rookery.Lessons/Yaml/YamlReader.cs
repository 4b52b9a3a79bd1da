using System.Collections.Immutable;
using Rookery.Notation;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace Rookery.Lessons.Yaml;

/// <summary>Reads the fields of a block, with the place of each.</summary>
/// <remarks>
/// Works on the library's events, so nothing is ever made that the text did not write out: anchors, aliases and tags,
/// with which a few lines stand for gigabytes or for objects, are refused, and depth and count are bounded.
/// </remarks>
internal sealed class YamlReader
{
    private const int DepthMax = 8;
    private const int NodesMax = 2_000;

    private readonly IParser _parser;
    private readonly int _lineBefore;
    private readonly int _columnBefore;
    private int _nodes;

    private YamlReader(IParser parser, int lineBefore, int columnBefore) =>
        (_parser, _lineBefore, _columnBefore) = (parser, lineBefore, columnBefore);

    /// <summary>Reads fields; null when they cannot be read, and then an error has been added.</summary>
    /// <param name="text">The inside of the block.</param>
    /// <param name="lineBefore">The line of the lesson before the block's first.</param>
    /// <param name="columnBefore">Columns by which the block is indented.</param>
    /// <param name="errors">Where errors go.</param>
    public static YamlMap? Read(string text, int lineBefore, int columnBefore, DiagnosticList errors)
    {
        var whole = new SourceSpan(lineBefore + 1, columnBefore + 1, 1);
        if (text.Length > LessonLimits.BlockMax)
        {
            errors.Add(LessonErrors.YamlTooLarge(whole, $"is longer than {LessonLimits.BlockMax} characters"));
            return null;
        }

        try
        {
            using var reader = new StringReader(text);
            return new YamlReader(new Parser(reader), lineBefore, columnBefore).ReadDocument(whole, errors);
        }
        catch (YamlException wrong)
        {
            var place = new SourceSpan(
                lineBefore + (int)Math.Max(1, wrong.Start.Line), columnBefore + (int)Math.Max(1, wrong.Start.Column),
                    1);
            errors.Add(LessonErrors.BadYaml(place, Plain(wrong.Message)));
            return null;
        }
        catch (InputException wrong)
        {
            errors.Add(wrong.Diagnostics[0]);
            return null;
        }
        catch (InvalidOperationException)
        {
            // The library's answer to some texts that break off within brackets; it does not say where.
            errors.Add(LessonErrors.BadYaml(whole, "it breaks off, or a bracket or a quote is not closed."));
            return null;
        }
    }

    private YamlMap? ReadDocument(SourceSpan whole, DiagnosticList errors)
    {
        _parser.Consume<StreamStart>();
        if (_parser.Accept<StreamEnd>(out _))
            return new(whole, []);
        _parser.Consume<DocumentStart>();
        YamlNode node = ReadNode(1);
        _parser.Consume<DocumentEnd>();
        if (!_parser.Accept<StreamEnd>(out _))
        {
            errors.Add(LessonErrors.BadYaml(SpanOf(_parser.Current!), "a second document begins here."));
            return null;
        }

        if (node is YamlMap map)
            return map;
        if (node is YamlScalar { Text: "" })
            return new(whole, []);
        errors.Add(LessonErrors.BadYaml(node.Span, "fields are expected."));
        return null;
    }

    private YamlNode ReadNode(int depth)
    {
        ParsingEvent at = _parser.Current ?? throw new YamlException("the text ends too soon");
        SourceSpan span = SpanOf(at);
        if (++_nodes > NodesMax)
            throw new InputException(LessonErrors.YamlTooLarge(span, $"has more than {NodesMax} values"));
        if (depth > DepthMax)
            throw new InputException(LessonErrors.YamlTooLarge(span, $"is nested more than {DepthMax} deep"));
        if (at is AnchorAlias || at is NodeEvent { Anchor.IsEmpty: false })
            throw new InputException(LessonErrors.YamlFeature(span, "Anchors and aliases (& and *)"));
        if (at is NodeEvent { Tag.IsEmpty: false })
            throw new InputException(LessonErrors.YamlFeature(span, "Tags (!)"));
        if (at is Scalar scalar)
        {
            _parser.MoveNext();
            return new YamlScalar(span, scalar.Value);
        }

        return _parser.TryConsume<SequenceStart>(out _) ? ReadList(span, depth) : ReadMap(span, depth);
    }

    private YamlList ReadList(SourceSpan span, int depth)
    {
        var items = ImmutableArray.CreateBuilder<YamlNode>();
        while (!_parser.TryConsume<SequenceEnd>(out _))
            items.Add(ReadNode(depth + 1));
        return new(span, items.ToImmutable());
    }

    private YamlMap ReadMap(SourceSpan span, int depth)
    {
        _parser.Consume<MappingStart>();
        var fields = ImmutableArray.CreateBuilder<YamlField>();
        while (!_parser.TryConsume<MappingEnd>(out _))
        {
            YamlNode name = ReadNode(depth + 1);
            if (name is not YamlScalar word)
                throw new InputException(LessonErrors.BadYaml(name.Span, "the name of a field is a word."));
            if (fields.Any(field => field.Name.Text == word.Text))
                throw new InputException(LessonErrors.FieldTwice(word.Span, word.Text));
            fields.Add(new(word, ReadNode(depth + 1)));
        }

        return new(span, fields.ToImmutable());
    }

    private SourceSpan SpanOf(ParsingEvent at)
    {
        long length = at.End.Line == at.Start.Line ? at.End.Column - at.Start.Column : 1;
        return new(
            _lineBefore + (int)at.Start.Line, _columnBefore + (int)at.Start.Column, (int)Math.Clamp(length, 1, 200));
    }

    // The library says its places in its own way; ours stand before the message.
    private static string Plain(string message)
    {
        int colon = message.IndexOf("): ", StringComparison.Ordinal);
        string plain = colon >= 0 && message.StartsWith('(') ? message[(colon + 3)..] : message;
        plain = plain.Trim().TrimEnd('.');
        return $"{(plain.Length > 0 ? char.ToLowerInvariant(plain[0]) + plain[1..] : "it breaks off")}.";
    }
}
