using System.Numerics;
using Rookery.Lessons.Formulas;

namespace Rookery.Lessons.Blocks;

/// <summary>One number that a block computed, by the name that formulas call it.</summary>
/// <param name="Name">Such as <c>steals</c> or <c>stolenWork.mean</c>.</param>
/// <param name="Numerator">The number's numerator in decimal digits.</param>
/// <param name="Denominator">Its denominator; <c>0</c> when the number has no value in this run.</param>
public sealed record MeasureValue(string Name, string Numerator, string Denominator)
{
    /// <summary>The word that it stands for, such as <c>broken</c>; empty for a plain number.</summary>
    public string Word { get; init; } = "";

    /// <summary>The number; <c>default</c> when it has no value.</summary>
    internal Exact ToExact() => Denominator == "0"
        ? default
        : Exact.Of(
            BigInteger.Parse(Numerator, System.Globalization.CultureInfo.InvariantCulture),
            BigInteger.Parse(Denominator, System.Globalization.CultureInfo.InvariantCulture));
}
