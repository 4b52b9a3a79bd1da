using System.Collections.Immutable;
using System.Globalization;

namespace Rookery.Lessons.Formulas;

/// <summary>How a printed number looks: what stands behind <c>as</c>.</summary>
internal sealed record NumberFormat
{
    private static readonly ImmutableArray<string> Words =
    [
        "no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve",
    ];

    private int? _decimals;
    private string _style = "";

    /// <summary>Whole numbers without decimals, others with two.</summary>
    public static NumberFormat Default { get; } = new();

    /// <summary>Reads <c>percent</c>, <c>percent 1</c>, <c>words</c>, <c>plain</c>, <c>1</c>; null when it is
    /// none.</summary>
    public static NumberFormat? Read(string text)
    {
        string[] words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return words switch
        {
            ["percent" or "words" or "plain"] => new NumberFormat { _style = words[0] },
            ["percent", var digits] when Decimals(digits) is { } count =>
                new NumberFormat { _style = "percent", _decimals = count },
            [var digits] when Decimals(digits) is { } count => new NumberFormat { _decimals = count },
            _ => null,
        };
    }

    /// <summary>The number as the page says it.</summary>
    public string Write(Exact value) => _style switch
    {
        "percent" => (value * Exact.Of(100)).ToText(_decimals ?? 0) + "\u00A0%",
        "words" when value.IsWhole && value.Numerator.Sign >= 0 && value.Numerator < Words.Length =>
            Words[(int)value.Numerator],
        "plain" => value.ToText(_decimals ?? (value.IsWhole ? 0 : 2), ""),
        _ => value.ToText(_decimals ?? (value.IsWhole ? 0 : 2)),
    };

    private static int? Decimals(string word) =>
        int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out int count) && count <= 9 ? count : null;
}
