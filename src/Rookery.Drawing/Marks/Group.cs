using System.Collections.Immutable;

namespace Rookery.Drawing;

/// <summary>Marks that belong together: named, perhaps explained, perhaps leading somewhere.</summary>
/// <param name="Id">Unique in its scene: a lower-case letter, then letters, digits and <c>-</c>.</param>
/// <param name="Marks">What belongs to it, the lowest first.</param>
public sealed record Group(string Id, ImmutableArray<Mark> Marks) : Mark
{
    /// <summary>What it is in a few words, shown when pointed at; empty for none.</summary>
    public string Label { get; init; } = "";

    /// <summary>Where it leads, such as <c>step=42</c> or <c>worker=3</c>; empty for nowhere.</summary>
    public string Target { get; init; } = "";

    /// <inheritdoc/>
    public override Area Bounds
    {
        get
        {
            Area? bounds = null;
            foreach (var mark in Marks)
                bounds = bounds is { } soFar ? soFar.Union(mark.Bounds) : mark.Bounds;
            return bounds ?? default;
        }
    }

    /// <inheritdoc/>
    public override int ShapeCount => Marks.Sum(mark => mark.ShapeCount);

    /// <inheritdoc/>
    public override IEnumerable<Mark> Shapes() => Marks.SelectMany(mark => mark.Shapes());
}
