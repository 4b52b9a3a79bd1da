using System.Globalization;
using System.Numerics;
using Rookery.Traces.Measuring;

namespace Rookery.Lab.Shell;

/// <summary>Numbers as the lab shows them: the same in every language, so that slides and handouts agree.</summary>
internal static class Numbers
{
    private static NumberFormatInfo Format { get; } = new() { NumberGroupSeparator = "\u202F" };

    /// <summary>A whole number, its thousands apart by a narrow space: <c>12 345</c>.</summary>
    public static string Whole(BigInteger value) => value.ToString("N0", Format);

    /// <summary>A ratio to three figures or as a whole; a dash where it does not exist.</summary>
    public static string Of(Ratio ratio)
    {
        if (!ratio.HasValue)
            return "–";
        double value = ratio.ToDouble();
        if (value == Math.Floor(value) && Math.Abs(value) < 1e15)
            return Whole((BigInteger)value);
        int decimals = Math.Abs(value) >= 100 ? 1 : Math.Abs(value) >= 10 ? 2 : 3;
        return value.ToString("N" + decimals.ToString(CultureInfo.InvariantCulture), Format);
    }

    /// <summary>A share as a percentage with one decimal.</summary>
    public static string Percent(double share) => (share * 100).ToString("N1", Format) + "\u202F%";
}
