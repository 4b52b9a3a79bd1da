namespace Rookery.Drawing;

/// <summary>What a speed-up figure shows.</summary>
public sealed record SpeedUpOptions
{
    /// <summary>Size and heading.</summary>
    public Frame Frame { get; init; } = new();

    /// <summary>
    /// Logarithmic axes; null (default): when the largest number of workers is more than 32 times the least.
    /// </summary>
    public bool? IsLogarithmic { get; init; }

    /// <summary>The most points drawn, 1,200 by default; of more, evenly ranked ones of each group are.</summary>
    public int PointsMax { get; init; } = 1_200;

    /// <summary>Whether the laws are drawn; true by default.</summary>
    public bool ShowLaws { get; init; } = true;
}
