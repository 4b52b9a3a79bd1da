using System.Collections.Immutable;
using System.Text;

namespace Rookery.Lab.Links;

/// <summary>Several values in one value of a link: <c>key=value</c> with spaces between, which links show as <c>+</c>.
/// </summary>
internal static class LinkWords
{
    /// <summary>The text of some values; those that are empty are left out.</summary>
    public static string Write(params ReadOnlySpan<(string Key, string Value)> words)
    {
        var text = new StringBuilder();
        foreach ((string key, string value) in words)
        {
            if (value.Length == 0)
                continue;
            if (text.Length > 0)
                text.Append(' ');
            text.Append(key).Append('=').Append(Uri.EscapeDataString(value).Replace(
                "%2F", "/", StringComparison.Ordinal).Replace("%2C", ",", StringComparison.Ordinal));
        }

        return text.ToString();
    }

    /// <summary>Reads such a text, which may come from anybody.</summary>
    /// <param name="text">The text.</param>
    /// <param name="keys">The keys that there are.</param>
    /// <returns>The values by their keys; null when the text is none, or has an unknown key or one twice.</returns>
    public static ImmutableDictionary<string, string>? Read(string text, ImmutableArray<string> keys)
    {
        var values = ImmutableDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        foreach (string word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            int equals = word.IndexOf('=', StringComparison.Ordinal);
            if (equals < 1 || !keys.Contains(word[..equals]) || values.ContainsKey(word[..equals]))
                return null;
            values[word[..equals]] = Uri.UnescapeDataString(word[(equals + 1)..]);
        }

        return values.ToImmutable();
    }
}
