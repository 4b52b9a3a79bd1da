namespace Rookery.Drawing;

/// <summary>One step of a path, to (X, Y). <c>default</c> is a move to the origin.</summary>
public readonly record struct PathStep
{
    private PathStep(PathStepKind kind, double x, double y, double x1 = 0, double y1 = 0, double x2 = 0, double y2 = 0)
    {
        (Kind, X, Y, X1, Y1, X2, Y2) = (kind, x, y, x1, y1, x2, y2);
    }

    /// <summary>What the step does.</summary>
    public PathStepKind Kind { get; }

    /// <summary>End of the step; without meaning for a close.</summary>
    public double X { get; }

    /// <summary>End of the step; without meaning for a close.</summary>
    public double Y { get; }

    /// <summary>First control point of a curve.</summary>
    public double X1 { get; }

    /// <summary>First control point of a curve.</summary>
    public double Y1 { get; }

    /// <summary>Second control point of a curve.</summary>
    public double X2 { get; }

    /// <summary>Second control point of a curve.</summary>
    public double Y2 { get; }

    /// <summary>Back to the last move.</summary>
    public static PathStep Close { get; } = new(PathStepKind.Close, 0, 0);

    /// <summary>Begin at a point.</summary>
    public static PathStep Move(double x, double y) => new(PathStepKind.Move, x, y);

    /// <summary>A straight line to a point.</summary>
    public static PathStep Line(double x, double y) => new(PathStepKind.Line, x, y);

    /// <summary>A curve to (x, y) that leaves towards (x1, y1) and arrives from (x2, y2).</summary>
    public static PathStep Curve(double x1, double y1, double x2, double y2, double x, double y) =>
        new(PathStepKind.Curve, x, y, x1, y1, x2, y2);
}
