using Rookery.Notation;

namespace Rookery.Simulation;

/// <summary>What a program is run on: workers, machine, scheduler, and limits.</summary>
public sealed record RunSettings
{
    /// <summary>The most workers that a run can have: 2^20.</summary>
    public const int WorkersMax = 1 << 20;

    /// <summary>
    /// Number of workers, 1 to <see cref="WorkersMax"/>. With a thread for each task: the number of cores.
    /// </summary>
    public int Workers { get; init; } = 4;

    /// <summary>What each operation costs.</summary>
    public Machine Machine { get; init; } = Machine.Ideal;

    /// <summary>How workers share the tasks.</summary>
    public Scheduler Scheduler { get; init; } = new();

    /// <summary>How large the run may grow.</summary>
    public RunLimits Limits { get; init; } = new();

    /// <summary>The cores: the machine's, or as many as there are workers.</summary>
    public int Cores => Machine.Cores > 0 ? Machine.Cores : Workers;

    /// <summary>Checks what the types alone cannot.</summary>
    /// <exception cref="InputException">The number of workers is out of range, or the options make no sense
    /// together.</exception>
    public void Validate()
    {
        if (Workers is < 1 or > WorkersMax)
            throw new InputException(SimulationErrors.BadWorkers(Workers, WorkersMax));
        if (Scheduler.Refusal() is { } refusal)
            throw new InputException(refusal);
    }
}
