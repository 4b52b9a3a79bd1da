using System.Globalization;
using System.Numerics;
using Rookery.Lab.Texts;
using Rookery.Traces.Measuring;

namespace Rookery.Lab.Shell;

/// <summary>
/// Numbers as the lab shows them: whole ones the same in every language, and before decimals the mark that the
/// language and its figures write.
/// </summary>
internal static class Numbers
{
    private static NumberFormatInfo Format { get; } = new() { NumberGroupSeparator = "\u202F" };

    /// <summary>A whole number, its thousands apart by a narrow space: <c>12 345</c>.</summary>
    public static string Whole(BigInteger value) => value.ToString("N0", Format);

    /// <summary>A ratio to three figures or as a whole; a dash where it does not exist.</summary>
    public static string Of(Ratio ratio, LabTexts texts) => ratio.HasValue ? Of(ratio.ToDouble(), texts) : "–";

    /// <inheritdoc cref="Of(Ratio, LabTexts)"/>
    public static string Of(double value, LabTexts texts) =>
        value == Math.Floor(value) && Math.Abs(value) < 1e15
            ? Whole((BigInteger)value)
            : Decimal(value, Math.Abs(value) >= 100 ? 1 : Math.Abs(value) >= 10 ? 2 : 3, texts);

    /// <summary>A number with so many decimals.</summary>
    public static string Decimal(double value, int decimals, LabTexts texts) =>
        value.ToString("N" + decimals.ToString(CultureInfo.InvariantCulture), Format)
            .Replace(".", texts["number.mark"], StringComparison.Ordinal);

    /// <summary>A share as a percentage with one decimal.</summary>
    public static string Percent(double share, LabTexts texts) => Decimal(share * 100, 1, texts) + "\u202F%";
}
