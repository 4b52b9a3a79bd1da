using System.Collections.Immutable;
using Rookery.Notation;

namespace Rookery.Simulation;

/// <summary>What each operation of the scheduler costs, in integer units of time.</summary>
/// <remarks>
/// All costs are from 0 to 10^12, <see cref="Probe"/> and <see cref="Slice"/> at least 1. The model leaves out caches
/// and memory bandwidth, the distance between cores, and all that varies from one operation to the next: costs are
/// constants. Presets: <see cref="Ideal"/>, <see cref="Unit"/>, <see cref="Typical"/>. Immutable.
/// </remarks>
public sealed record Machine
{
    /// <summary>The largest cost, 10^12.</summary>
    public const long CostMax = 1_000_000_000_000;

    /// <summary>Name of the preset or file that it came from.</summary>
    public string Name { get; init; } = "ideal";

    /// <summary>Queueing a child or a continuation, or starting none.</summary>
    public long Fork { get; init; }

    /// <summary>An owner gets its own task, or a worker one from the shared queue.</summary>
    public long Take { get; init; }

    /// <summary>A thief looks at a victim; at least 1.</summary>
    public long Probe { get; init; } = 1;

    /// <summary>Moving what was stolen to the thief; the victim's end is busy for as long.</summary>
    public long Steal { get; init; }

    /// <summary>Finding out that a race was lost.</summary>
    public long LostRace { get; init; }

    /// <summary>Going to sleep.</summary>
    public long Sleep { get; init; }

    /// <summary>From the signal until the woken worker runs.</summary>
    public long Wake { get; init; }

    /// <summary>Paid by the waker for each worker that it wakes.</summary>
    public long Signal { get; init; }

    /// <summary>Paid by the parent for starting a thread.</summary>
    public long StartThread { get; init; }

    /// <summary>Putting another worker on a core.</summary>
    public long Switch { get; init; }

    /// <summary>How long a worker keeps its core while others wait for one; at least 1.</summary>
    public long Slice { get; init; } = 1_000_000;

    /// <summary>Number of cores; 0 for as many as there are workers.</summary>
    public int Cores { get; init; }

    /// <summary>The unit of time: <c>units</c> or <c>ns</c>.</summary>
    public string TimeUnit { get; init; } = "units";

    /// <summary>Everything is free except a look, which takes 1: what the theory assumes.</summary>
    public static Machine Ideal { get; } = new();

    /// <summary>Every operation takes 1 unit: small enough to follow by hand.</summary>
    public static Machine Unit { get; } = new()
    {
        Name = "unit",
        Fork = 1,
        Take = 1,
        Probe = 1,
        Steal = 1,
        LostRace = 1,
        Sleep = 1,
        Wake = 1,
        Signal = 1,
        StartThread = 1,
        Switch = 1,
        Slice = 100,
    };

    /// <summary>Nanoseconds of a server processor of about 2018; each number's source is in docs/machine.md.</summary>
    public static Machine Typical { get; } = new()
    {
        Name = "typical",
        TimeUnit = "ns",

        // A compare-and-swap in the worker's own cache, 7.0 ns: McKenney, "Is Parallel Programming Hard, And, If So,
        // What Can You Do About It?", ch. 3, table "CPU 0 view of synchronization mechanisms", Xeon Platinum 8176.
        Fork = 7,

        // The owner's take pays one store-load fence, as dear as that compare-and-swap: same table.
        Take = 7,

        // A look is one cache miss to a line of another core of the socket: blind compare-and-swap, 47.5 ns, same
        // table.
        Probe = 48,

        // A successful steal: a compare-and-swap on a line of another core, 101.9 ns, same table.
        Steal = 102,

        // A failed compare-and-swap moves the line just as well: 101.9 ns, same table.
        LostRace = 102,

        // Direct context switch, 3.8 us: Li, Ding, Shen, "Quantifying the cost of context switch", ExpCS 2007 (from
        // memory).
        Sleep = 3_800,
        Switch = 3_800,

        // From signal to running: an ASSUMPTION, the low end of 5 to 50 us; it depends on the core's idle state.
        Wake = 5_000,

        // A system call that signals: an ASSUMPTION, about a microsecond.
        Signal = 1_000,

        // Starting a thread: an ASSUMPTION, tens of microseconds.
        StartThread = 20_000,

        // A time slice: an ASSUMPTION, a few milliseconds as general-purpose kernels use.
        Slice = 3_000_000,
    };

    /// <summary>The presets, in the order in which help lists them.</summary>
    public static ImmutableArray<Machine> Presets { get; } = [Ideal, Unit, Typical];

    /// <summary>The names of the costs, as commands, lessons and traces use them.</summary>
    public static ImmutableArray<string> CostNames { get; } =
    [
        "fork", "take", "probe", "steal", "lost-race", "sleep", "wake", "signal", "start-thread", "switch", "slice",
        "cores",
    ];

    /// <summary>The preset of that name.</summary>
    /// <exception cref="InputException">There is none; the message lists the names.</exception>
    public static Machine Find(string name) =>
        Presets.FirstOrDefault(m => m.Name == name)
        ?? throw new InputException(SimulationErrors.UnknownName("machine", name, Presets.Select(m => m.Name)));

    /// <summary>This machine with one cost changed.</summary>
    /// <exception cref="InputException">The cost is unknown, or the value out of range.</exception>
    public Machine With(string cost, long value)
    {
        if (!CostNames.Contains(cost))
            throw new InputException(SimulationErrors.UnknownCost(cost));
        long least = cost is "probe" or "slice" ? 1 : 0;
        if (value < least || value > (cost == "cores" ? int.MaxValue : CostMax))
            throw new InputException(SimulationErrors.BadCost(cost, value, least));
        return cost switch
        {
            "fork" => this with { Fork = value },
            "take" => this with { Take = value },
            "probe" => this with { Probe = value },
            "steal" => this with { Steal = value },
            "lost-race" => this with { LostRace = value },
            "sleep" => this with { Sleep = value },
            "wake" => this with { Wake = value },
            "signal" => this with { Signal = value },
            "start-thread" => this with { StartThread = value },
            "switch" => this with { Switch = value },
            "slice" => this with { Slice = value },
            _ => this with { Cores = (int)value },
        };
    }

    /// <summary>All costs by name, as a trace carries them.</summary>
    public ImmutableSortedDictionary<string, long> ToCosts()
    {
        var costs = ImmutableSortedDictionary.CreateBuilder<string, long>(StringComparer.Ordinal);
        costs["fork"] = Fork;
        costs["take"] = Take;
        costs["probe"] = Probe;
        costs["steal"] = Steal;
        costs["lost-race"] = LostRace;
        costs["sleep"] = Sleep;
        costs["wake"] = Wake;
        costs["signal"] = Signal;
        costs["start-thread"] = StartThread;
        costs["switch"] = Switch;
        costs["slice"] = Slice;
        return costs.ToImmutable();
    }
}
