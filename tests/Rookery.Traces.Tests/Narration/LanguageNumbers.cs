using System.Text.RegularExpressions;

namespace Rookery.Traces.Tests.Narration;

/// <summary>The numbers in a text, without the marks of its language and in an order of their own.</summary>
internal static partial class LanguageNumbers
{
    public static string Of(string text) => string.Join(
        ' ',
        Numbers().Matches(text).Select(match => match.Value.Replace(".", "", StringComparison.Ordinal)
            .Replace(",", "", StringComparison.Ordinal)).Order(StringComparer.Ordinal));

    [GeneratedRegex(@"\d+(?:[.,]\d{3})*")]
    private static partial Regex Numbers();
}
