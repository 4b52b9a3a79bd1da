namespace Rookery.Drawing;

/// <summary>What a comparison shows.</summary>
public sealed record ComparisonOptions
{
    /// <summary>Size and heading.</summary>
    public Frame Frame { get; init; } = new();

    /// <summary>
    /// Logarithmic values; null (default): when all are above 0 and the largest is over 50 times the least.
    /// </summary>
    public bool? IsLogarithmic { get; init; }
}
