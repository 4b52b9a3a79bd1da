namespace Rookery.Drawing;

/// <summary>What a matrix of steals shows.</summary>
public sealed record StealMatrixOptions
{
    /// <summary>Size and heading.</summary>
    public Frame Frame { get; init; } = new();

    /// <summary>
    /// The most rows and columns, 2 to 32; 32 by default. More workers are put together in groups of equal size.
    /// </summary>
    public int RowsMax { get; init; } = 32;
}
