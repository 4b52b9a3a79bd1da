namespace Rookery.Drawing;

/// <summary>What a step of a path does.</summary>
public enum PathStepKind : byte
{
    /// <summary>Lift the pen and begin elsewhere.</summary>
    Move,

    /// <summary>A straight line.</summary>
    Line,

    /// <summary>A cubic Bézier curve with two control points.</summary>
    Curve,

    /// <summary>A straight line back to the last move.</summary>
    Close,
}
