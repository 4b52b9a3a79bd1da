using System.Collections.Immutable;

namespace Rookery.Traces;

/// <summary>What a run was made from: enough to make it again, and to know how its events are to be read.</summary>
/// <remarks>
/// Options and costs are kept under the names of docs/scheduler.md and docs/machine.md, so that a file made by another
/// runtime may carry what it has. A missing option means the default (the first value in its row of that page).
/// Equality compares the maps by reference; nothing depends on it.
/// </remarks>
public sealed record TraceInputs
{
    /// <summary>Name of the program, such as <c>count.fj</c>; empty when unknown.</summary>
    public string Program { get; init; } = "";

    /// <summary>Text of the program; empty when unknown.</summary>
    public string Source { get; init; } = "";

    /// <summary>What made the trace: <c>simulation</c>, or the name of a runtime.</summary>
    public string Maker { get; init; } = "";

    /// <summary>Parameter values, by name.</summary>
    public ImmutableSortedDictionary<string, long> Parameters { get; init; } = EmptyNumbers;

    /// <summary>Scheduler options: option word to value word, such as <c>fork-runs</c> to <c>parent</c>.</summary>
    public ImmutableSortedDictionary<string, string> Scheduler { get; init; } =
        ImmutableSortedDictionary.Create<string, string>(StringComparer.Ordinal);

    /// <summary>Machine costs: name to time units, such as <c>steal</c> to 100.</summary>
    public ImmutableSortedDictionary<string, long> Machine { get; init; } = EmptyNumbers;

    /// <summary>
    /// Number of workers asked for, at least 1. With a thread for each task, more workers may appear.
    /// </summary>
    public int Workers { get; init; } = 1;

    /// <summary>Number of cores, at least 1: the processors that the laws speak of.</summary>
    public int Cores { get; init; } = 1;

    /// <summary>Seed of all random draws.</summary>
    public long Seed { get; init; }

    /// <summary>Unit of time: <c>units</c> in a simulation without a scale, or <c>ns</c>.</summary>
    public string TimeUnit { get; init; } = "units";

    /// <summary>How far two workers' clocks may differ, in units of time; 0 in a simulation.</summary>
    public long ClockUncertainty { get; init; }

    /// <summary>
    /// Whether every look for work is in the trace; a real runtime may record only some (docs/trace.md).
    /// </summary>
    public bool HasAllLooks { get; init; } = true;

    /// <summary>Whether the run finished, or starved: every worker waited for what none could run.</summary>
    public bool Starved { get; init; }

    /// <summary>The value of a scheduler option, or <paramref name="byDefault"/> when the trace does not say.</summary>
    public string Option(string name, string byDefault) => Scheduler.GetValueOrDefault(name, byDefault);

    /// <summary>A machine cost, or 0 when the trace does not say.</summary>
    public long Cost(string name) => Machine.GetValueOrDefault(name, 0);

    private static ImmutableSortedDictionary<string, long> EmptyNumbers =>
        ImmutableSortedDictionary.Create<string, long>(StringComparer.Ordinal);
}
