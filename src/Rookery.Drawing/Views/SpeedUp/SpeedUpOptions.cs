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

    /// <summary>Whether the laws are drawn; true by default.</summary>
    public bool ShowLaws { get; init; } = true;
}
