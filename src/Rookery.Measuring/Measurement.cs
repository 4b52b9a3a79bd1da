using System.Collections.Immutable;
using Rookery.Traces;

namespace Rookery.Measuring;

/// <summary>How long a program took on real workers, several times.</summary>
/// <remarks>Immutable. Times are nanoseconds of the steady clock, from handing the program over to its end.</remarks>
public sealed record Measurement
{
    /// <summary>Each run, in the order in which they were made; the warm-up is not among them.</summary>
    public required ImmutableArray<long> Times { get; init; }

    /// <summary>
    /// Workers that the pool had; for the runtime's tasks the processors, since it chooses its threads itself.
    /// </summary>
    public required int Workers { get; init; }

    /// <summary>Tasks of the program.</summary>
    public required int Tasks { get; init; }

    /// <summary>Work of all tasks in nanoseconds, as the program says.</summary>
    public required long Work { get; init; }

    /// <summary>Nanoseconds of a unit of work.</summary>
    public required double UnitNanoseconds { get; init; }

    /// <summary>Nanoseconds of a step of spinning, when the runs began.</summary>
    public required double StepNanoseconds { get; init; }

    /// <summary>The recorded run, made after the others; null when none was asked for.</summary>
    public Trace? Trace { get; init; }

    /// <summary>The middle one of the times, the lower of two.</summary>
    public long Median => Sorted[(Times.Length - 1) / 2];

    /// <summary>The shortest time.</summary>
    public long Min => Sorted[0];

    /// <summary>The longest time.</summary>
    public long Max => Sorted[^1];

    private ImmutableArray<long> Sorted => Times.Sort();
}
