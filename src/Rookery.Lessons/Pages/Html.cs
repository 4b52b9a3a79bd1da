using System.Globalization;
using System.Text;

namespace Rookery.Lessons.Pages;

/// <summary>HTML while it is written. Mutable.</summary>
internal sealed class Html
{
    private readonly StringBuilder _out = new();

    /// <summary>A text for content and attributes.</summary>
    public static string Escape(string text)
    {
        var escaped = new StringBuilder(text.Length + 16);
        foreach (char c in text)
        {
            _ = c switch
            {
                '&' => escaped.Append("&amp;"),
                '<' => escaped.Append("&lt;"),
                '>' => escaped.Append("&gt;"),
                '"' => escaped.Append("&quot;"),
                '\0' => escaped.Append('\uFFFD'),
                _ => escaped.Append(c),
            };
        }

        return escaped.ToString();
    }

    /// <summary>HTML as it is.</summary>
    public Html Raw(string html)
    {
        _out.Append(html);
        return this;
    }

    /// <summary>HTML with values between, which are escaped.</summary>
    public Html Line(FormattableString html)
    {
        object[] values = [.. html.GetArguments().Select(value =>
            Escape(Convert.ToString(value, CultureInfo.InvariantCulture) ?? ""))];
        _out.AppendFormat(CultureInfo.InvariantCulture, html.Format, values).Append('\n');
        return this;
    }

    /// <inheritdoc/>
    public override string ToString() => _out.ToString();
}
