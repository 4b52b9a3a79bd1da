namespace Rookery.Drawing;

/// <summary>A straight line.</summary>
/// <param name="X1">From here.</param>
/// <param name="Y1">From here.</param>
/// <param name="X2">To here.</param>
/// <param name="Y2">To here.</param>
/// <param name="Ink">What it stands for.</param>
public sealed record Rule(double X1, double Y1, double X2, double Y2, Ink Ink) : Mark
{
    /// <summary>Width in pixels.</summary>
    public double Width { get; init; } = 1.5;

    /// <summary>How it is broken up.</summary>
    public Dash Dash { get; init; }

    /// <inheritdoc/>
    public override Area Bounds =>
        new(Math.Min(X1, X2), Math.Min(Y1, Y2), Math.Abs(X2 - X1), Math.Abs(Y2 - Y1));
}
