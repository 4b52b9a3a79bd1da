using System.Globalization;
using System.Numerics;

namespace Rookery.Lessons.Formulas;

/// <summary>An exact rational number of any size, of either sign.</summary>
/// <remarks>
/// In lowest terms with a positive denominator, so equal numbers are equal values. <c>default</c> is no number.
/// Example: 1.2 is 6/5, and 6/5 * 10 is 12.
/// </remarks>
internal readonly record struct Exact : IComparable<Exact>
{
    private Exact(BigInteger numerator, BigInteger denominator) => (Numerator, Denominator) = (numerator, denominator);

    /// <summary>What is divided.</summary>
    public BigInteger Numerator { get; }

    /// <summary>What it is divided by, at least 1; 0 for <c>default</c>.</summary>
    public BigInteger Denominator { get; }

    /// <summary>Whether it is a whole number.</summary>
    public bool IsWhole => Denominator.IsOne;

    /// <summary>A fraction in lowest terms.</summary>
    /// <exception cref="DivideByZeroException">The denominator is 0.</exception>
    public static Exact Of(BigInteger numerator, BigInteger denominator)
    {
        if (denominator.IsZero)
            throw new DivideByZeroException();
        BigInteger shared = BigInteger.GreatestCommonDivisor(numerator, denominator) * denominator.Sign;
        return new(numerator / shared, denominator / shared);
    }

    /// <summary>A whole number.</summary>
    public static Exact Of(BigInteger whole) => new(whole, BigInteger.One);

    /// <summary>A number written with digits and perhaps a point, such as <c>1.25</c>.</summary>
    public static Exact Parse(string digits)
    {
        int point = digits.IndexOf('.', StringComparison.Ordinal);
        if (point < 0)
            return Of(BigInteger.Parse(digits, CultureInfo.InvariantCulture));
        BigInteger all = BigInteger.Parse(digits.Remove(point, 1), CultureInfo.InvariantCulture);
        return Of(all, BigInteger.Pow(10, digits.Length - point - 1));
    }

    /// <summary>The sum.</summary>
    public static Exact operator +(Exact a, Exact b) =>
        Of((a.Numerator * b.Denominator) + (b.Numerator * a.Denominator), a.Denominator * b.Denominator);

    /// <summary>The difference.</summary>
    public static Exact operator -(Exact a, Exact b) => a + -b;

    /// <summary>The opposite.</summary>
    public static Exact operator -(Exact a) => new(-a.Numerator, a.Denominator);

    /// <summary>The product.</summary>
    public static Exact operator *(Exact a, Exact b) => Of(a.Numerator * b.Numerator, a.Denominator * b.Denominator);

    /// <summary>The quotient.</summary>
    /// <exception cref="DivideByZeroException">The right side is 0.</exception>
    public static Exact operator /(Exact a, Exact b) => Of(a.Numerator * b.Denominator, a.Denominator * b.Numerator);

    /// <summary>Whether the left is smaller.</summary>
    public static bool operator <(Exact a, Exact b) => a.CompareTo(b) < 0;

    /// <summary>Whether the left is larger.</summary>
    public static bool operator >(Exact a, Exact b) => a.CompareTo(b) > 0;

    /// <summary>Whether the left is smaller or equal.</summary>
    public static bool operator <=(Exact a, Exact b) => a.CompareTo(b) <= 0;

    /// <summary>Whether the left is larger or equal.</summary>
    public static bool operator >=(Exact a, Exact b) => a.CompareTo(b) >= 0;

    /// <inheritdoc/>
    public int CompareTo(Exact other) => (Numerator * other.Denominator).CompareTo(other.Numerator * Denominator);

    /// <summary>Rounded to so many decimals, halves away from zero, thousands apart.</summary>
    /// <param name="decimals">At least 0.</param>
    /// <param name="groups">What stands between thousands; a comma in the pages.</param>
    public string ToText(int decimals, string groups = ",")
    {
        BigInteger scale = BigInteger.Pow(10, decimals);
        BigInteger doubled = BigInteger.Abs(Numerator) * scale * 2;
        BigInteger rounded = (doubled + Denominator) / (Denominator * 2);
        BigInteger whole = BigInteger.DivRem(rounded, scale, out BigInteger rest);
        string sign = Numerator.Sign < 0 && !rounded.IsZero ? "\u2212" : "";
        string tail = decimals == 0 ? "" : "." + rest.ToString(CultureInfo.InvariantCulture).PadLeft(decimals, '0');
        return sign + Grouped(whole.ToString(CultureInfo.InvariantCulture), groups) + tail;
    }

    private static string Grouped(string digits, string groups)
    {
        for (int at = digits.Length - 3; at > 0; at -= 3)
            digits = digits.Insert(at, groups);
        return digits;
    }
}
