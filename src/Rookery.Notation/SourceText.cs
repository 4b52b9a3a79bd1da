namespace Rookery.Notation;

/// <summary>A text with a name, cut into lines, as its author sees it in an editor.</summary>
/// <remarks>
/// A line ends at <c>\n</c>, <c>\r\n</c> or <c>\r</c>; a byte order mark at the very start is dropped. Immutable.
/// </remarks>
public sealed class SourceText
{
    private readonly List<(int Start, int Length)> _lines = [];

    /// <summary>Cuts a text into lines.</summary>
    /// <param name="name">What errors call it, usually the file's name.</param>
    /// <param name="text">All of it.</param>
    public SourceText(string name, string text)
    {
        Name = name;
        Text = text.StartsWith('\uFEFF') ? text[1..] : text;
        int start = 0;
        for (int at = 0; at < Text.Length; at++)
        {
            if (Text[at] is not ('\n' or '\r'))
                continue;
            _lines.Add((start, at - start));
            if (Text[at] == '\r' && at + 1 < Text.Length && Text[at + 1] == '\n')
                at++;
            start = at + 1;
        }

        _lines.Add((start, Text.Length - start));
    }

    /// <summary>What errors call it.</summary>
    public string Name { get; }

    /// <summary>All of it, without a byte order mark.</summary>
    public string Text { get; }

    /// <summary>Number of lines, at least 1: a text that ends in a line break has an empty last line.</summary>
    public int LineCount => _lines.Count;

    /// <summary>One line without its line break.</summary>
    /// <param name="number">Which, from 1 to <see cref="LineCount"/>.</param>
    public string Line(int number) => Text.Substring(_lines[number - 1].Start, _lines[number - 1].Length);

    /// <summary>Where a line begins in <see cref="Text"/>, from 0.</summary>
    /// <param name="number">Which, from 1 to <see cref="LineCount"/>.</param>
    public int StartOf(int number) => _lines[number - 1].Start;
}
