namespace Rookery.Simulation;

/// <summary>How large a run may grow before it ends with an error that names the limit.</summary>
public sealed record RunLimits
{
    /// <summary>Tasks, by default 10^8.</summary>
    public long TasksMax { get; init; } = 100_000_000;

    /// <summary>Events, by default 2 * 10^9.</summary>
    public long EventsMax { get; init; } = 2_000_000_000;

    /// <summary>Threads, where each task has its own; by default 100,000.</summary>
    public int ThreadsMax { get; init; } = 100_000;
}
