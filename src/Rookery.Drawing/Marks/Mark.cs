namespace Rookery.Drawing;

/// <summary>One thing in a scene: a shape, a text, or a group of them.</summary>
public abstract record Mark
{
    private protected Mark()
    {
    }

    /// <summary>The smallest upright rectangle around what is drawn, without half the width of its edge.</summary>
    public abstract Area Bounds { get; }

    /// <summary>Number of shapes and texts: 1, except for a group.</summary>
    public virtual int ShapeCount => 1;

    /// <summary>The mark itself; for a group the shapes and texts within.</summary>
    public virtual IEnumerable<Mark> Shapes() => [this];
}
