using Rookery.Pool;

namespace Rookery.Measuring;

/// <summary>How a program is measured.</summary>
public sealed record MeasureSettings
{
    /// <summary>The pool; its recording capacity is for the recorded run alone.</summary>
    public PoolOptions Pool { get; init; } = new();

    /// <summary>Whether the runtime's own task library runs it instead of the pool.</summary>
    public bool IsOnTasks { get; init; }

    /// <summary>Nanoseconds that a unit of work takes, above 0.</summary>
    public double UnitNanoseconds { get; init; } = 1000;

    /// <summary>Runs that count, at least 1.</summary>
    public int Repeats { get; init; } = 10;

    /// <summary>
    /// Runs before those, in which the caches learn. Before the first of them the program is run without its work until
    /// the compiler has done its best; with 0 that is left out as well.
    /// </summary>
    public int WarmUps { get; init; } = 2;

    /// <summary>
    /// Whether one more run is recorded, after as many others that write notes as there are <see cref="WarmUps"/>.
    /// </summary>
    public bool IsRecorded { get; init; }

    /// <summary>The most tasks that a program may have.</summary>
    public int TasksMax { get; init; } = 5_000_000;

    /// <summary>The most seconds that all runs together may be expected to take.</summary>
    public double SecondsMax { get; init; } = 300;
}
