using System.Globalization;
using System.Text;

namespace Rookery.Notation;

/// <summary>
/// Writes diagnostics for people: place, code, what is wrong, the source line with a caret, what to do.
/// </summary>
public static class DiagnosticText
{
    /// <summary>Source lines longer than this are shown in part, around the caret.</summary>
    private const int ShownMax = 110;

    /// <summary>One diagnostic as a few lines of text, each ended by a line feed.</summary>
    /// <remarks>
    /// Example: <c>count.fj:3:5: error FJ012: …</c>, the source line, a line of carets under the place, and
    /// <c>hint: …</c>. Control characters in the source are shown as blanks.
    /// </remarks>
    public static string Render(SourceText source, Diagnostic diagnostic)
    {
        var text = new StringBuilder();
        var span = diagnostic.Span;
        text.Append(source.Name);
        if (span.Line > 0)
            text.Append(CultureInfo.InvariantCulture, $":{span.Line}:{span.Column}");
        text.Append(CultureInfo.InvariantCulture, $": error {diagnostic.Code}: {diagnostic.What}\n");
        if (span.Line > 0 && span.Line <= source.LineCount)
            AppendSource(text, source.Line(span.Line), span);
        if (diagnostic.Hint.Length > 0)
            text.Append(CultureInfo.InvariantCulture, $"  hint: {diagnostic.Hint}\n");
        return text.ToString();
    }

    /// <summary>All diagnostics, one after the other.</summary>
    public static string Render(SourceText source, IEnumerable<Diagnostic> diagnostics) =>
        string.Concat(diagnostics.Select(d => Render(source, d)));

    private static void AppendSource(StringBuilder text, string line, SourceSpan span)
    {
        int column = Math.Clamp(span.Column - 1, 0, line.Length);
        int from = line.Length <= ShownMax ? 0 : Math.Clamp(column - (ShownMax / 2), 0, line.Length - ShownMax);
        string shown = Clean(line.Substring(from, Math.Min(ShownMax, line.Length - from)));
        string number = span.Line.ToString(CultureInfo.InvariantCulture).PadLeft(5);
        int carets = Math.Clamp(span.Length, 1, Math.Max(1, shown.Length - (column - from)));
        text.Append(CultureInfo.InvariantCulture, $"{number} | {shown}\n");
        text.Append(' ', number.Length).Append(" | ").Append(' ', column - from).Append('^', carets).Append('\n');
    }

    private static string Clean(string line) =>
        string.Create(line.Length, line, static (to, from) =>
        {
            for (int i = 0; i < from.Length; i++)
                to[i] = char.IsControl(from[i]) ? ' ' : from[i];
        });
}
