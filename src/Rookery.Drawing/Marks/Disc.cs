namespace Rookery.Drawing;

/// <summary>A filled circle.</summary>
/// <param name="X">Centre.</param>
/// <param name="Y">Centre.</param>
/// <param name="Radius">In pixels.</param>
/// <param name="Fill">What it stands for.</param>
public sealed record Disc(double X, double Y, double Radius, Ink Fill) : Mark
{
    /// <summary>What its edge stands for; <c>default</c> for no edge.</summary>
    public Ink Edge { get; init; }

    /// <summary>Width of the edge in pixels.</summary>
    public double EdgeWidth { get; init; } = 2;

    /// <inheritdoc/>
    public override Area Bounds => new(X - Radius, Y - Radius, 2 * Radius, 2 * Radius);
}
