using System.Globalization;
using Rookery.Traces.Measuring;

namespace Rookery.Reports;

/// <summary>Numbers as people read them aloud.</summary>
internal static class Say
{
    private static readonly string[] Small =
        ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];

    /// <summary>3,120.</summary>
    public static string Whole(Int128 value) => value.ToString("#,0", CultureInfo.InvariantCulture);

    /// <summary>3.84, with that many decimals.</summary>
    public static string Decimal(double value, int decimals) =>
        value.ToString("#,0." + new string('0', decimals), CultureInfo.InvariantCulture);

    /// <summary>3.84 or a dash when there is no value.</summary>
    public static string Decimal(Ratio value, int decimals) =>
        value.HasValue ? Decimal(value.ToDouble(), decimals) : "–";

    /// <summary>95.2 %.</summary>
    public static string Percent(Ratio value) =>
        value.HasValue ? Decimal(100 * value.ToDouble(), 1) + " %" : "–";

    /// <summary>3,120 units; one unit.</summary>
    public static string Time(Int128 ticks, string unit) =>
        ticks == 1 && unit == "units" ? "1 unit" : $"{Whole(ticks)} {unit}";

    /// <summary>2,963.5 units.</summary>
    public static string Time(Ratio ticks, string unit)
    {
        if (!ticks.HasValue)
            return "–";
        return ticks.Numerator % ticks.Denominator == 0
            ? Time(ticks.Numerator / ticks.Denominator, unit)
            : $"{Decimal(ticks.ToDouble(), 1)} {unit}";
    }

    /// <summary>1 steal; 7 steals.</summary>
    public static string Count(Int128 count, string one) => count == 1 ? $"1 {one}" : $"{Whole(count)} {one}s";

    /// <summary>The same in words up to twelve: seven steals.</summary>
    public static string CountInWords(Int128 count, string one)
    {
        string number = count >= 0 && count < Small.Length ? Small[(int)count] : Whole(count);
        return count == 1 ? $"{number} {one}" : $"{number} {one}s";
    }

    /// <summary>With a capital letter, as a sentence begins.</summary>
    public static string Sentence(string text) =>
        text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];
}
