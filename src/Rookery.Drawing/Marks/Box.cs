namespace Rookery.Drawing;

/// <summary>An upright rectangle.</summary>
/// <param name="Place">Where it is.</param>
/// <param name="Fill">What its inside stands for; <c>default</c> leaves it open.</param>
public sealed record Box(Area Place, Ink Fill) : Mark
{
    /// <summary>What its edge stands for; <c>default</c> for no edge.</summary>
    public Ink Edge { get; init; }

    /// <summary>Width of the edge in pixels.</summary>
    public double EdgeWidth { get; init; } = 1.5;

    /// <summary>Radius of the corners in pixels.</summary>
    public double Radius { get; init; }

    /// <inheritdoc/>
    public override Area Bounds => Place;
}
