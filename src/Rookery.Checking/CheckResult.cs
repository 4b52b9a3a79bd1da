using System.Collections.Immutable;
using Rookery.Checking.Witnesses;

namespace Rookery.Checking;

/// <summary>What checking one scenario under one memory model has found.</summary>
/// <remarks>Immutable. The same on every machine, however many threads helped.</remarks>
public sealed record CheckResult
{
    /// <summary>The algorithm's name, usually its file.</summary>
    public required string Algorithm { get; init; }

    /// <summary>The scenario's name.</summary>
    public required string Scenario { get; init; }

    /// <summary>The memory model.</summary>
    public required MemoryModel Memory { get; init; }

    /// <summary>The answer.</summary>
    public required Verdict Verdict { get; init; }

    /// <summary>What fails, when something does.</summary>
    public Property? Property { get; init; }

    /// <summary>The limit that was reached, when one was.</summary>
    public Budget? Exhausted { get; init; }

    /// <summary>Distinct states found.</summary>
    public required long States { get; init; }

    /// <summary>Steps made, those to states that were known included.</summary>
    public required long Transitions { get; init; }

    /// <summary>Steps from the start to the states found last.</summary>
    public required int Depth { get; init; }

    /// <summary>States that nobody had gone on from when the search ended; 0 when it was complete.</summary>
    public required long Frontier { get; init; }

    /// <summary>Bytes of a packed state, without what finding it again takes.</summary>
    public required int StateBytes { get; init; }

    /// <summary>Bytes that all stored states took, with what finding them again takes.</summary>
    public required long Bytes { get; init; }

    /// <summary>
    /// All ways in which the scenario ended, in a fixed order; those found so far when a limit was reached.
    /// </summary>
    public required ImmutableArray<Outcome> Outcomes { get; init; }

    /// <summary>
    /// A shortest execution that shows a failure, or what a litmus test asks for; null where there is none.
    /// </summary>
    public Witness? Witness { get; init; }

    /// <summary>Progress of each operation, by name; empty when it was not asked for.</summary>
    public ImmutableArray<OperationProgress> Progress { get; init; } = [];
}
