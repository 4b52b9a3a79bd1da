using System.Collections.Immutable;
using Rookery.Traces;

namespace Rookery.Lab.Predict;

/// <summary>A step that is hidden and asked for, with all that counts as right.</summary>
/// <param name="Step">The step: what is shown is the stage before it.</param>
/// <param name="Event">The event of the trace at that step.</param>
/// <param name="Parts">What is asked about it, in the order in which it is asked.</param>
/// <param name="Random">Those parts that a draw decided.</param>
/// <param name="Tasks">The tasks that count as right: several when one steal moves several.</param>
/// <param name="Ends">The ends that count as right: both when one task is there; none when no end is asked
/// for.</param>
internal sealed record Question(
    int Step,
    TraceEvent Event,
    ImmutableArray<DrillPart> Parts,
    ImmutableArray<DrillPart> Random,
    ImmutableArray<int> Tasks,
    ImmutableArray<QueueEnd> Ends)
{
    /// <summary>The answer that is right in every part.</summary>
    public Answer Solution => new(
        Event.Worker,
        Event.Kind,
        Parts.Contains(DrillPart.Victim) ? Event.Other : null,
        Parts.Contains(DrillPart.End) ? Ends[0] : null,
        Parts.Contains(DrillPart.Task) ? Event.Task : null);

    /// <summary>Whether all that is asked was decided by draws.</summary>
    public bool IsAllRandom => Parts.All(part => Random.Contains(part));
}
