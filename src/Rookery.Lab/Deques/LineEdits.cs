using System.Collections.Immutable;
using Rookery.Notation;

namespace Rookery.Lab.Deques;

/// <summary>What can be done to one line of an algorithm, to see what breaks.</summary>
/// <remarks>Lines count from 1. What cannot be done leaves the text as it is.</remarks>
internal static class LineEdits
{
    /// <summary>Takes a line out.</summary>
    public static string Delete(string text, int line)
    {
        var lines = LinesOf(text);
        return IsIn(lines, line) && lines.Length > 1 ? Join(lines.RemoveAt(line - 1)) : text;
    }

    /// <summary>Makes a line a comment, or a comment a line again.</summary>
    public static string Comment(string text, int line)
    {
        var lines = LinesOf(text);
        if (!IsIn(lines, line) || lines[line - 1].Trim().Length == 0)
            return text;
        string old = lines[line - 1];
        int at = old.Length - old.TrimStart().Length;
        string changed = !IsComment(old) ? old.Insert(at, "# ")
            : old[at..].StartsWith("# ", StringComparison.Ordinal) ? old.Remove(at, 2)
            : old.Remove(at, 1);
        return Join(lines.SetItem(line - 1, changed));
    }

    /// <summary>Exchanges a line with the next (1) or the one before (-1).</summary>
    public static string Move(string text, int line, int by)
    {
        var lines = LinesOf(text);
        if (!IsIn(lines, line) || !IsIn(lines, line + by))
            return text;
        string moved = lines[line - 1];
        return Join(lines.SetItem(line - 1, lines[line + by - 1]).SetItem(line + by - 1, moved));
    }

    /// <summary>Whether a line is a comment and nothing else.</summary>
    public static bool IsComment(string line) => line.TrimStart().StartsWith('#');

    /// <summary>The lines; at least one.</summary>
    public static ImmutableArray<string> LinesOf(string text)
    {
        var source = new SourceText("", text);
        return [.. Enumerable.Range(1, source.LineCount).Select(source.Line)];
    }

    private static bool IsIn(ImmutableArray<string> lines, int line) => line >= 1 && line <= lines.Length;

    private static string Join(ImmutableArray<string> lines) => string.Join('\n', lines);
}
