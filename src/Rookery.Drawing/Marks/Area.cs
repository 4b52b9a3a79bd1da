namespace Rookery.Drawing;

/// <summary>An upright rectangle in pixels.</summary>
/// <param name="X">Left edge.</param>
/// <param name="Y">Upper edge.</param>
/// <param name="Width">At least 0.</param>
/// <param name="Height">At least 0.</param>
public readonly record struct Area(double X, double Y, double Width, double Height)
{
    /// <summary>Right edge.</summary>
    public double Right => X + Width;

    /// <summary>Lower edge.</summary>
    public double Bottom => Y + Height;

    /// <summary>The middle, left to right.</summary>
    public double MiddleX => X + (Width / 2);

    /// <summary>The middle, top to bottom.</summary>
    public double MiddleY => Y + (Height / 2);

    /// <summary>Whether the two share more than an edge.</summary>
    public bool Overlaps(in Area other) =>
        X < other.Right && other.X < Right && Y < other.Bottom && other.Y < Bottom;

    /// <summary>Whether all of <paramref name="other"/> lies within, give or take half a pixel.</summary>
    public bool Contains(in Area other) =>
        other.X >= X - 0.5 && other.Y >= Y - 0.5 && other.Right <= Right + 0.5 && other.Bottom <= Bottom + 0.5;

    /// <summary>The smallest area around both.</summary>
    public Area Union(in Area other)
    {
        var left = Math.Min(X, other.X);
        var upper = Math.Min(Y, other.Y);
        return new(left, upper, Math.Max(Right, other.Right) - left, Math.Max(Bottom, other.Bottom) - upper);
    }

    /// <summary>The same with each edge moved inwards.</summary>
    public Area Shrunk(double by) =>
        new(X + by, Y + by, Math.Max(0, Width - (2 * by)), Math.Max(0, Height - (2 * by)));
}
