using System.Collections.Immutable;
using Rookery.Notation;

namespace Rookery.Traces.Replaying;

/// <summary>The steps that a name stands for in one trace, or why it stands for none.</summary>
/// <param name="Steps">In order; empty exactly when there is an <paramref name="Error"/>. A step is an event: the stage
/// before it is <c>At(step)</c>, the one after it <c>At(step + 1)</c>.</param>
/// <param name="Error">What is wrong with the name, or that the trace has no such moment; null when there are steps.</param>
public sealed record MomentSteps(ImmutableArray<int> Steps, Diagnostic? Error)
{
    /// <summary>Whether the trace has such a moment.</summary>
    public bool IsFound => Error is null;

    /// <summary>The first of the steps; -1 when there are none.</summary>
    public int First => Steps.IsEmpty ? -1 : Steps[0];
}
