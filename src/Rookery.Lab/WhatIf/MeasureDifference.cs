using System.Numerics;
using Rookery.Traces.Measuring;

namespace Rookery.Lab.WhatIf;

/// <summary>One measure of two runs, side by side.</summary>
/// <param name="Measure">Which.</param>
/// <param name="Former">In the former run; no value where it does not exist.</param>
/// <param name="Now">In the run shown.</param>
/// <param name="IsComparable">Whether both are in one unit.</param>
internal sealed record MeasureDifference(NamedMeasure Measure, Ratio Former, Ratio Now, bool IsComparable)
{
    /// <summary>Whether both have values that can be compared.</summary>
    public bool HasBoth => IsComparable && Former.HasValue && Now.HasValue;

    /// <summary>Below 0 when the measure fell, above when it rose, 0 when it stayed or cannot be compared.</summary>
    public int Sign => HasBoth ? Numerators().Difference.Sign : 0;

    /// <summary>Now less former, exact; no value when they cannot be compared.</summary>
    public Ratio Difference => HasBoth ? Reduced(Numerators().Difference, Numerators().Denominator) : default;

    /// <summary>Now over former, exact; no value when they cannot be compared, or the former is 0.</summary>
    public Ratio Factor => HasBoth && Former.Numerator > 0
        ? Reduced((BigInteger)Now.Numerator * Former.Denominator, (BigInteger)Now.Denominator * Former.Numerator)
        : default;

    // Wider than the ratios themselves: a product of two of their parts need not fit.
    private (BigInteger Difference, BigInteger Denominator) Numerators() => (
        ((BigInteger)Now.Numerator * Former.Denominator) - ((BigInteger)Former.Numerator * Now.Denominator),
        (BigInteger)Now.Denominator * Former.Denominator);

    private static Ratio Reduced(BigInteger numerator, BigInteger denominator)
    {
        var common = BigInteger.GreatestCommonDivisor(numerator, denominator);
        (BigInteger upper, BigInteger lower) = (numerator / common, denominator / common);
        return BigInteger.Abs(upper) <= Int128.MaxValue && lower <= Int128.MaxValue
            ? new((Int128)upper, (Int128)lower)
            : default;
    }
}
