using System.Buffers;
using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Rookery.Notation;

namespace Rookery.Drawing;

/// <summary>Numbers, paths and text in the form that SVG wants.</summary>
internal static class SvgText
{
    private static readonly SearchValues<char> Plain = SearchValues.Create(
        "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789 .,:;!?%+-*/=()[]{}_#'|~^@$\\");

    /// <summary>At most two decimals, none that are zero at the end, no minus before zero.</summary>
    public static string Number(double value)
    {
        Invariant.Holds(double.IsFinite(value), $"A scene holds the number {value}.");
        var rounded = Math.Round(value, 2, MidpointRounding.AwayFromZero);
        return (rounded == 0 ? 0 : rounded).ToString("0.##", CultureInfo.InvariantCulture);
    }

    /// <summary>Appends what <see cref="Number"/> gives, without making a text of it.</summary>
    public static StringBuilder AppendNumber(StringBuilder to, double value)
    {
        Invariant.Holds(double.IsFinite(value), $"A scene holds the number {value}.");
        if (Math.Abs(value) >= 1e12)
            return to.Append(Number(value));
        var hundredths = (long)Math.Round(Math.Round(value, 2, MidpointRounding.AwayFromZero) * 100);
        if (hundredths < 0)
            to.Append('-');
        var size = Math.Abs(hundredths);
        to.Append(size / 100);
        var rest = (int)(size % 100);
        if (rest == 0)
            return to;
        to.Append('.').Append((char)('0' + (rest / 10)));
        return rest % 10 == 0 ? to : to.Append((char)('0' + (rest % 10)));
    }

    /// <summary>
    /// Text for content and attributes; what XML 1.0 does not allow becomes U+FFFD, line breaks a space.
    /// </summary>
    public static string Escape(string text)
    {
        if (!text.AsSpan().ContainsAnyExcept(Plain))
            return text;
        var escaped = new StringBuilder(text.Length + 16);
        foreach (var rune in text.EnumerateRunes())
        {
            switch (rune.Value)
            {
                case '&':
                    escaped.Append("&amp;");
                    break;
                case '<':
                    escaped.Append("&lt;");
                    break;
                case '>':
                    escaped.Append("&gt;");
                    break;
                case '"':
                    escaped.Append("&quot;");
                    break;
                case '\t' or '\n' or '\r':
                    escaped.Append(' ');
                    break;
                case < 0x20 or 0xFFFE or 0xFFFF:
                    escaped.Append('\uFFFD');
                    break;
                default:
                    escaped.Append(rune);
                    break;
            }
        }

        return escaped.ToString();
    }

    /// <summary>Appends a path as the value of the attribute <c>d</c>.</summary>
    public static void AppendPath(StringBuilder path, ImmutableArray<PathStep> steps)
    {
        foreach (var step in steps)
        {
            switch (step.Kind)
            {
                case PathStepKind.Move:
                    path.Append('M');
                    break;
                case PathStepKind.Line:
                    path.Append('L');
                    break;
                case PathStepKind.Curve:
                    AppendNumber(path.Append('C'), step.X1).Append(' ');
                    AppendNumber(path, step.Y1).Append(' ');
                    AppendNumber(path, step.X2).Append(' ');
                    AppendNumber(path, step.Y2).Append(' ');
                    break;
                case PathStepKind.Close:
                    path.Append('Z');
                    continue;
            }

            AppendNumber(path, step.X).Append(' ');
            AppendNumber(path, step.Y);
        }
    }
}
