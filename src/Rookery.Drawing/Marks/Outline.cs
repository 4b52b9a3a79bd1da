using System.Collections.Immutable;

namespace Rookery.Drawing;

/// <summary>A path of straight and curved steps, filled, drawn along, or both.</summary>
/// <param name="Steps">At least one; the first is a move.</param>
/// <param name="Fill">What its inside stands for; <c>default</c> leaves it open.</param>
public sealed record Outline(ImmutableArray<PathStep> Steps, Ink Fill) : Mark
{
    /// <summary>What the line along it stands for; <c>default</c> for none.</summary>
    public Ink Edge { get; init; }

    /// <summary>Width of the line in pixels.</summary>
    public double EdgeWidth { get; init; } = 2;

    /// <summary>How the line is broken up.</summary>
    public Dash Dash { get; init; }

    /// <summary>The rectangle around all points, the control points of curves included.</summary>
    public override Area Bounds
    {
        get
        {
            var bounds = new Area(Steps[0].X, Steps[0].Y, 0, 0);
            foreach (var step in Steps)
            {
                if (step.Kind == PathStepKind.Close)
                    continue;
                bounds = bounds.Union(new(step.X, step.Y, 0, 0));
                if (step.Kind == PathStepKind.Curve)
                    bounds = bounds.Union(new(step.X1, step.Y1, 0, 0)).Union(new(step.X2, step.Y2, 0, 0));
            }

            return bounds;
        }
    }
}
