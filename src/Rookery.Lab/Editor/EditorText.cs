using System.Collections.Immutable;
using Rookery.Notation;

namespace Rookery.Lab.Editor;

/// <summary>A text that is being edited, line by line, with its errors where they stand.</summary>
/// <remarks>
/// Errors are found some time after a key was pressed. Until then those of the lines that did not change stay where
/// they are, moved with their lines; those of changed lines vanish, since nobody knows yet. Immutable.
/// </remarks>
internal sealed class EditorText
{
    private EditorText(string text, ImmutableArray<EditorMark> marks)
    {
        Text = text;
        Lines = LinesOf(text);
        Marks = marks;
    }

    /// <summary>The text, with line feeds between lines.</summary>
    public string Text { get; }

    /// <summary>Its lines; at least one.</summary>
    public ImmutableArray<string> Lines { get; }

    /// <summary>The errors that have a place, in the order of the text.</summary>
    public ImmutableArray<EditorMark> Marks { get; }

    /// <summary>A text with what was found wrong with it.</summary>
    public static EditorText Of(string text, ImmutableArray<Diagnostic> problems)
    {
        text = text.ReplaceLineEndings("\n");
        ImmutableArray<string> lines = LinesOf(text);
        return new(text, [.. problems.Where(problem => problem.Span.Line > 0)
            .Select(problem => MarkOf(problem, lines)).OrderBy(mark => mark.Line).ThenBy(mark => mark.Column)]);
    }

    /// <summary>The text after a key: marks move with lines that stayed the same.</summary>
    public EditorText With(string text)
    {
        text = text.ReplaceLineEndings("\n");
        ImmutableArray<string> lines = LinesOf(text);
        int common = Math.Min(Lines.Length, lines.Length);
        int head = 0;
        while (head < common && Lines[head] == lines[head])
            head++;
        int tail = 0;
        while (tail < common - head && Lines[^(tail + 1)] == lines[^(tail + 1)])
            tail++;
        int moved = lines.Length - Lines.Length;
        return new(text, [.. Marks.Where(mark => mark.Line < head || mark.Line >= Lines.Length - tail)
            .Select(mark => mark.Line < head ? mark : mark with { Line = mark.Line + moved })]);
    }

    /// <summary>The pieces of a line, in order: those that are wrong apart from the others.</summary>
    /// <param name="line">From 0.</param>
    public ImmutableArray<EditorSegment> SegmentsOf(int line)
    {
        string text = Lines[line];
        var pieces = ImmutableArray.CreateBuilder<EditorSegment>();
        int done = 0;
        bool isAtEnd = false;
        foreach (EditorMark mark in Marks.Where(mark => mark.Line == line))
        {
            isAtEnd |= mark.Column >= text.Length;
            int start = Math.Max(done, mark.Column);
            int end = Math.Min(mark.Column + mark.Length, text.Length);
            if (end <= start)
                continue;
            if (start > done)
                pieces.Add(new(text[done..start], false));
            pieces.Add(new(text[start..end], true));
            done = end;
        }

        if (done < text.Length)
            pieces.Add(new(text[done..], false));
        // Behind the end of a line a blank is underlined: something is missing there.
        if (isAtEnd)
            pieces.Add(new(" ", true));
        return pieces.ToImmutable();
    }

    /// <summary>Where a mark begins in the text, in characters from its start.</summary>
    public int OffsetOf(EditorMark mark)
    {
        int offset = 0;
        for (int line = 0; line < mark.Line; line++)
            offset += Lines[line].Length + 1;
        return offset + Math.Min(mark.Column, Lines[mark.Line].Length);
    }

    private static ImmutableArray<string> LinesOf(string text) => [.. text.Split('\n')];

    private static EditorMark MarkOf(Diagnostic problem, ImmutableArray<string> lines)
    {
        int line = Math.Clamp(problem.Span.Line - 1, 0, lines.Length - 1);
        int column = Math.Clamp(problem.Span.Column - 1, 0, lines[line].Length);
        int length = Math.Max(1, Math.Min(problem.Span.Length, lines[line].Length - column));
        return new(line, column, length, problem);
    }
}
