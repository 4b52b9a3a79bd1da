namespace Rookery.Traces.Measuring;

/// <summary>An exact ratio of two whole numbers, such as work over span.</summary>
/// <remarks>Not reduced: the two numbers mean something. A denominator of 0 stands for "no value".</remarks>
/// <param name="Numerator">The upper number.</param>
/// <param name="Denominator">The lower number, at least 0.</param>
public readonly record struct Ratio(Int128 Numerator, Int128 Denominator)
{
    /// <summary>Whether there is a value.</summary>
    public bool HasValue => Denominator > 0;

    /// <summary>The nearest double; 0 when there is no value.</summary>
    public double ToDouble() => HasValue ? (double)Numerator / (double)Denominator : 0;
}
