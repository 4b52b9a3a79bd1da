namespace Rookery.Drawing;

/// <summary>What a comparison shows.</summary>
public sealed record ComparisonOptions
{
    /// <summary>Size and heading.</summary>
    public Frame Frame { get; init; } = new();

    /// <summary>The most points drawn, 2,000 by default; of more, evenly ranked ones of each treatment are.</summary>
    public int PointsMax { get; init; } = 2_000;

    /// <summary>
    /// Logarithmic values; null (default): when all are above 0 and the largest is over 50 times the least.
    /// </summary>
    public bool? IsLogarithmic { get; init; }
}
