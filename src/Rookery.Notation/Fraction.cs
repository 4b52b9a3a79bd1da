using System.Globalization;

namespace Rookery.Notation;

/// <summary>An exact fraction of two whole numbers, such as work divided by span.</summary>
/// <remarks>
/// In lowest terms, so that equal fractions are equal values. <c>default</c> is no fraction (its denominator is 0).
/// Example: 17 / 8 is written <c>17/8</c>, 16 / 8 is written <c>2</c>.
/// </remarks>
public readonly record struct Fraction
{
    private Fraction(long numerator, long denominator) => (Numerator, Denominator) = (numerator, denominator);

    /// <summary>What is divided.</summary>
    public long Numerator { get; }

    /// <summary>What it is divided by, at least 1.</summary>
    public long Denominator { get; }

    /// <summary>A fraction in lowest terms.</summary>
    /// <param name="numerator">At least 0.</param>
    /// <param name="denominator">At least 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is too small.</exception>
    public static Fraction Of(long numerator, long denominator)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(numerator);
        ArgumentOutOfRangeException.ThrowIfLessThan(denominator, 1);
        long a = numerator, b = denominator;
        while (b != 0)
            (a, b) = (b, a % b);
        return new(numerator / a, denominator / a);
    }

    /// <summary>The nearest floating-point number.</summary>
    public double ToDouble() => (double)Numerator / Denominator;

    /// <inheritdoc/>
    public override string ToString() => Denominator == 1
        ? Numerator.ToString(CultureInfo.InvariantCulture)
        : string.Create(CultureInfo.InvariantCulture, $"{Numerator}/{Denominator}");
}
