using System.Globalization;

namespace Rookery.Drawing;

/// <summary>Numbers as people read them in a figure; the same in every culture.</summary>
public static class NumberText
{
    private const string Prefixes = "kMGTPE";

    /// <summary>Below this a double fits into a decimal with all its digits.</summary>
    private const double DecimalMax = 1e15;

    /// <summary>All digits, in groups of three: <c>12,345</c>.</summary>
    public static string Whole(long value) => value.ToString("#,0", CultureInfo.InvariantCulture);

    /// <summary>All digits up to a million; beyond three digits and a prefix: <c>1.23 M</c> for 1,234,567.</summary>
    /// <remarks>
    /// Prefixes k, M, G, T, P, E stand for 10^3 to 10^18; larger values have more digits before the E.
    /// </remarks>
    public static string Short(double value)
    {
        var size = Math.Abs(value);
        if (size < 1_000_000)
            return Decimal(value, size is >= 1000 or 0 ? 0 : 2);
        var power = 0;
        while (size >= 999.5 && power < Prefixes.Length)
        {
            size /= 1000;
            power++;
        }

        var digits = size >= 99.95 ? 0 : size >= 9.995 ? 1 : 2;
        return string.Concat(Decimal(Math.CopySign(size, value), digits), " ", Prefixes.AsSpan(power - 1, 1));
    }

    /// <summary>
    /// For small places: up to 9,999 all digits, then two or three and a prefix: <c>12k</c>, <c>1.2M</c>.
    /// </summary>
    public static string Compact(long value)
    {
        if (Math.Abs((double)value) < 10_000)
            return Whole(value);
        var size = Math.Abs((double)value);
        var power = 0;
        while (size >= 999.5 && power < Prefixes.Length)
        {
            size /= 1000;
            power++;
        }

        return Decimal(Math.CopySign(size, value), size >= 9.95 ? 0 : 1) + Prefixes[power - 1];
    }

    /// <summary>At most so many decimals, none that are zero at the end: <c>0.5</c>, <c>12</c>.</summary>
    /// <remarks>
    /// The nearest number of 15 digits is rounded, not the binary one: 12.075 is <c>12.08</c>, as in a text beside it.
    /// </remarks>
    public static string Decimal(double value, int decimalsMax)
    {
        var digits = Math.Clamp(decimalsMax, 0, 15);
        var rounded = Math.Abs(value) < DecimalMax
            ? (double)Math.Round((decimal)value, digits, MidpointRounding.AwayFromZero)
            : Math.Round(value, digits, MidpointRounding.AwayFromZero);
        return (rounded == 0 ? 0 : rounded).ToString(
            "#,0." + new string('#', decimalsMax), CultureInfo.InvariantCulture);
    }

    /// <summary>
    /// The label of a tick: as many decimals as its neighbours need to differ, a prefix from 10^5 on.
    /// </summary>
    public static string Tick(double tick, IReadOnlyList<double> ticks)
    {
        var largest = ticks.Max(Math.Abs);
        var step = ticks.Count > 1 ? ticks[1] - ticks[0] : Math.Max(1, largest);
        var power = largest < 100_000 ? 0 : Math.Min(Prefixes.Length, (int)Math.Floor(Math.Log10(largest) / 3));
        var scale = Math.Pow(1000, power);
        var decimals = (int)Math.Clamp(Math.Ceiling(-Math.Log10(step / scale) - 1e-9), 0, 9);
        var prefix = power == 0 || tick == 0 ? "" : " " + Prefixes[power - 1];
        return Decimal(tick / scale, decimals) + prefix;
    }

    /// <summary>
    /// A share as a percentage without decimals: <c>97 %</c>; at least one that is not all is never 100 %.
    /// </summary>
    public static string Percent(double share)
    {
        var percent = Math.Round(share * 100, MidpointRounding.AwayFromZero);
        if (share is > 0 and < 0.005)
            return "< 1 %";
        if (share < 1 && percent >= 100)
            return "> 99 %";
        return string.Create(CultureInfo.InvariantCulture, $"{percent:0} %");
    }
}
