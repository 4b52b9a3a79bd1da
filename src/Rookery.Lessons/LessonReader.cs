using System.Collections.Immutable;
using System.Text;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;
using Rookery.Lessons.Blocks;
using Rookery.Lessons.Formulas;
using Rookery.Lessons.Markdown;
using Rookery.Lessons.Reading;
using Rookery.Lessons.Yaml;
using Rookery.Notation;
using SourceSpan = Rookery.Notation.SourceSpan;

namespace Rookery.Lessons;

/// <summary>Reads lessons: from text to blocks that can be computed, or to all that is wrong with it.</summary>
public sealed class LessonReader
{
    private readonly SourceText _source;
    private readonly DiagnosticList _errors = new();
    private readonly List<LessonBlock> _blocks = [];
    private readonly List<PrintedNumber> _numbers = [];
    private readonly SortedSet<string> _images = new(StringComparer.Ordinal);
    private readonly Dictionary<FencedCodeBlock, LessonBlock> _byFence = [];
    private int _fences;

    private LessonReader(SourceText source) => _source = source;

    /// <summary>Reads a lesson.</summary>
    /// <param name="name">What messages call it, usually the file's name.</param>
    /// <param name="text">Its text, see docs/lessons.md.</param>
    public static Parsed<Lesson> Read(string name, string text)
    {
        if (text.Length > LessonLimits.TextMax)
            return Parsed<Lesson>.Bad([LessonErrors.TooLong(LessonLimits.TextMax)]);
        return new LessonReader(new SourceText(name, text)).Read();
    }

    private Parsed<Lesson> Read()
    {
        FrontMatter front = FrontMatter.Read(_source, _errors, out int lines);
        MarkdownDocument? document = LessonMarkdown.Read(BodyAfter(lines), _errors);
        foreach (MarkdownObject item in document?.Descendants() ?? [])
        {
            switch (item)
            {
                case FencedCodeBlock fence:
                    ReadFence(fence);
                    break;
                case MeasureInline number:
                    ReadNumber(number);
                    break;
                case LinkInline { IsImage: true } image:
                    ReadImage(image);
                    break;
            }
        }

        return _errors.IsEmpty && document is not null
            ? Parsed<Lesson>.Good(new Lesson(
                _source, front, document, [.. _blocks], _byFence.ToImmutableDictionary(), [.. _numbers],
                _images.ToImmutableSortedSet(StringComparer.Ordinal)))
            : Parsed<Lesson>.Bad(_errors.ToImmutable());
    }

    // The front matter's lines stay as empty ones, so that the library counts lines as the author does.
    private string BodyAfter(int lines)
    {
        var body = new StringBuilder(_source.Text.Length);
        for (int line = 1; line <= _source.LineCount; line++)
            body.Append(line <= lines ? "" : _source.Line(line)).Append('\n');
        return body.ToString();
    }

    private void ReadFence(FencedCodeBlock fence)
    {
        string word = fence.Info ?? "";
        int column = fence.Column;
        var span = new SourceSpan(fence.Line + 1, column + 1, fence.OpeningFencedCharCount + word.Length);
        if (BlockKinds.Find(word) is not { } kind)
        {
            // A word that is nearly one of ours was meant to be it: it would otherwise be printed as code.
            if (word.Length > 3 && Suggestion.Nearest(word, BlockKinds.All.Select(one => one.Word)) is { } nearest)
                _errors.Add(LessonErrors.UnknownBlock(span, word, nearest));
            return;
        }

        if (++_fences > LessonLimits.BlocksMax)
        {
            if (_fences == LessonLimits.BlocksMax + 1)
                _errors.Add(LessonErrors.TooManyBlocks(span, LessonLimits.BlocksMax));
            return;
        }

        string inside = fence.Lines.ToString();
        if (YamlReader.Read(inside, fence.Line + 1, column, _errors) is not { } map)
            return;
        var own = new DiagnosticList();
        var place = new BlockPlace(_source, span, _fences);
        LessonBlock? block = kind.Read(new FieldReader($"The {word}", map with { Span = span }, own), place);
        foreach (Diagnostic wrong in own.ToImmutable())
            _errors.Add(wrong);
        if (block is null)
            return;
        if (block.Name.Length > 0 && _blocks.Any(other => other.Name == block.Name))
            _errors.Add(LessonErrors.NameTaken(span, block.Name));
        _byFence.Add(fence, block);
        _blocks.Add(block);
    }

    private void ReadNumber(MeasureInline number)
    {
        int start = number.Text.Length - number.Text.TrimStart().Length;
        string text = number.Text.Trim();
        var span = new SourceSpan(number.Line + 1, number.Column + 3 + start, Math.Max(1, text.Length));
        NumberFormat? format = NumberFormat.Default;
        int asAt = text.LastIndexOf(" as ", StringComparison.Ordinal);
        if (asAt >= 0)
        {
            string asked = text[(asAt + 4)..].Trim();
            format = NumberFormat.Read(asked);
            if (format is null)
                _errors.Add(LessonErrors.BadFormat(span, asked));
            text = text[..asAt].TrimEnd();
        }

        if (FormulaParser.Read(text, span, _errors) is { } formula && format is not null)
            _numbers.Add(new(number, text, span, formula, format, _blocks.Count - 1));
    }

    private void ReadImage(LinkInline image)
    {
        string name = Uri.UnescapeDataString(image.Url ?? "");
        var span = new SourceSpan(image.Line + 1, image.Column + 1, Math.Max(1, image.Span.Length));
        if (!FileNames.IsInside(name))
            _errors.Add(LessonErrors.BadFileName(span, name));
        else if (!ImageKinds.IsImage(name))
            _errors.Add(LessonErrors.BadImage(span, name));
        else
            _images.Add(name);
    }
}
