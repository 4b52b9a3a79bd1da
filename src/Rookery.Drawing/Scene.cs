using System.Collections.Immutable;

namespace Rookery.Drawing;

/// <summary>A figure as data: shapes and text with what they stand for, in pixels, y downwards.</summary>
/// <remarks>
/// A scene knows no colour: each mark carries an <see cref="Ink"/> that says what it stands for, and a
/// <see cref="Style"/> gives the paint when the scene is written. Equality compares arrays by reference; compare what
/// <see cref="SvgWriter"/> writes instead.
/// </remarks>
public sealed record Scene
{
    /// <summary>The most shapes that a view puts into a scene, whatever the size of its trace.</summary>
    public const int ShapesMax = 3_000;

    /// <summary>What the figure shows, as one line.</summary>
    public required string Title { get; init; }

    /// <summary>What there is to see, with the numbers, in words: for those who cannot see the figure.</summary>
    public required string Description { get; init; }

    /// <summary>Width in pixels.</summary>
    public required double Width { get; init; }

    /// <summary>Height in pixels.</summary>
    public required double Height { get; init; }

    /// <summary>What is drawn, the lowest first.</summary>
    public required ImmutableArray<Mark> Marks { get; init; }

    /// <summary>Number of shapes and texts, those within groups included, groups themselves not.</summary>
    public int ShapeCount => Marks.Sum(mark => mark.ShapeCount);

    /// <summary>All shapes and texts in the order of drawing, those within groups included, groups not.</summary>
    public IEnumerable<Mark> Shapes() => Marks.SelectMany(mark => mark.Shapes());
}
