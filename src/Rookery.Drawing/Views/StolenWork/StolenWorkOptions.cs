namespace Rookery.Drawing;

/// <summary>What a histogram of stolen work shows.</summary>
public sealed record StolenWorkOptions
{
    /// <summary>Size and heading.</summary>
    public Frame Frame { get; init; } = new();

    /// <summary>
    /// Whether classes of work grow by doubling; null (default): when the largest is more than 20 times the least.
    /// </summary>
    public bool? IsLogarithmic { get; init; }
}
