using Rookery.Notation;

namespace Rookery.Simulation;

/// <summary>What a program is run on: workers, machine, scheduler, and limits.</summary>
public sealed record RunSettings
{
    /// <summary>The most workers that a run can have: 2^20.</summary>
    public const int WorkersMax = 1 << 20;

    /// <summary>The longest unit of work: 10^9.</summary>
    public const long UnitLengthMax = 1_000_000_000;

    /// <summary>
    /// Number of workers, 1 to <see cref="WorkersMax"/>. With a thread for each task: the number of cores.
    /// </summary>
    public int Workers { get; init; } = 4;

    /// <summary>What each operation costs.</summary>
    public Machine Machine { get; init; } = Machine.Ideal;

    /// <summary>How workers share the tasks.</summary>
    public Scheduler Scheduler { get; init; } = new();

    /// <summary>
    /// How long one unit of the program's work and waiting takes on the machine, 1 to 10^9; 1 unless said.
    /// </summary>
    /// <remarks>With a machine in nanoseconds and a program in microseconds: 1,000.</remarks>
    public long UnitLength { get; init; } = 1;

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
        if (UnitLength is < 1 or > UnitLengthMax)
            throw new ArgumentOutOfRangeException(nameof(UnitLength), UnitLength, "A unit takes 1 to 10^9.");
        if (Scheduler.Refusal() is { } refusal)
            throw new InputException(refusal);
    }
}
