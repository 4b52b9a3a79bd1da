using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Rookery.Notation;

namespace Rookery.Drawing;

/// <summary>Numbers, paths and text in the form that SVG wants.</summary>
internal static class SvgText
{
    /// <summary>At most two decimals, none that are zero at the end, no minus before zero.</summary>
    public static string Number(double value)
    {
        Invariant.Holds(double.IsFinite(value), $"A scene holds the number {value}.");
        var rounded = Math.Round(value, 2, MidpointRounding.AwayFromZero);
        return (rounded == 0 ? 0 : rounded).ToString("0.##", CultureInfo.InvariantCulture);
    }

    /// <summary>
    /// Text for content and attributes; what XML 1.0 does not allow becomes U+FFFD, line breaks a space.
    /// </summary>
    public static string Escape(string text)
    {
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

    /// <summary>A path as the value of the attribute <c>d</c>.</summary>
    public static string PathOf(ImmutableArray<PathStep> steps)
    {
        var path = new StringBuilder(steps.Length * 12);
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
                    path.Append('C').Append(Number(step.X1)).Append(' ').Append(Number(step.Y1)).Append(' ')
                        .Append(Number(step.X2)).Append(' ').Append(Number(step.Y2)).Append(' ');
                    break;
                case PathStepKind.Close:
                    path.Append('Z');
                    continue;
            }

            path.Append(Number(step.X)).Append(' ').Append(Number(step.Y));
        }

        return path.ToString();
    }
}
