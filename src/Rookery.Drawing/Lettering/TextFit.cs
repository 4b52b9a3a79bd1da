namespace Rookery.Drawing;

/// <summary>Makes text fit: whole, shortened with …, or not at all.</summary>
public static class TextFit
{
    /// <summary>Reserve for readers without the font: common substitutes are up to a tenth wider.</summary>
    public const double Reserve = 1.08;

    private const string More = "…";
    private const int LettersMin = 3;

    /// <summary>Whether a text fits into a width, with the reserve.</summary>
    public static bool Fits(string text, double size, double width, bool isBold = false) =>
        FontWidths.Measure(text, size, isBold) * Reserve <= width;

    /// <summary>
    /// The text if it fits; else as many of its first letters as fit, and …; empty when fewer than three do.
    /// </summary>
    /// <param name="text">Any text.</param>
    /// <param name="size">Size of the font in pixels.</param>
    /// <param name="width">Room in pixels.</param>
    /// <param name="isBold">Whether it is set bold.</param>
    public static string Shorten(string text, double size, double width, bool isBold = false)
    {
        // Far more letters than could fit need not be measured: no letter of the table is under 1/5 of the size.
        var sensible = Math.Min(text.Length, (int)Math.Min(10_000, Math.Max(0, width / size * 5) + 8));
        if (sensible == text.Length && Fits(text, size, width, isBold))
            return text;

        var more = FontWidths.Measure(More, size, isBold);
        var (low, high) = (0, sensible);
        while (low < high)
        {
            var middle = (low + high + 1) / 2;
            if ((FontWidths.Measure(Kept(text, middle), size, isBold) + more) * Reserve <= width)
                low = middle;
            else
                high = middle - 1;
        }

        return low < LettersMin ? "" : Cut(text, low);
    }

    /// <summary>A text broken at spaces into lines that fit, at most <paramref name="linesMax"/>.</summary>
    /// <remarks>The last line is shortened when there is more; words wider than a line are shortened too.</remarks>
    public static IReadOnlyList<string> Wrap(string text, double size, double width, int linesMax, bool isBold = false)
    {
        var lines = new List<string>();
        var line = "";
        var words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        for (var i = 0; i < words.Length; i++)
        {
            var longer = line.Length == 0 ? words[i] : line + " " + words[i];
            if (line.Length == 0 || Fits(longer, size, width, isBold))
            {
                line = longer;
                continue;
            }

            if (lines.Count == linesMax - 1)
            {
                line = Shorten(string.Join(' ', words[i..].Prepend(line)), size, width, isBold);
                break;
            }

            lines.Add(Shorten(line, size, width, isBold));
            line = words[i];
        }

        lines.Add(Shorten(line, size, width, isBold));
        return lines;
    }

    private static string Cut(string text, int letters) => string.Concat(Kept(text, letters), More);

    private static ReadOnlySpan<char> Kept(string text, int letters)
    {
        var end = letters > 0 && char.IsHighSurrogate(text[letters - 1]) ? letters - 1 : letters;
        return text.AsSpan(0, end).TrimEnd();
    }
}
