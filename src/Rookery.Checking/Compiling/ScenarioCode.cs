using System.Collections.Immutable;
using Rookery.Checking.Syntax;
using Rookery.Notation.Expressions;

namespace Rookery.Checking.Compiling;

/// <summary>A scenario ready to be explored under one memory model.</summary>
internal sealed class ScenarioCode
{
    public required string Scenario { get; init; }

    public required MemoryModel Model { get; init; }

    /// <summary>Shared names in the order of the file.</summary>
    public required ImmutableArray<SharedMemory> Memory { get; init; }

    public required ImmutableArray<ThreadCode> Threads { get; init; }

    /// <summary>All operations of the scenario, thread by thread.</summary>
    public required ImmutableArray<Invocation> Invocations { get; init; }

    /// <summary>How the owner empties the deque at the end; null without a drain line.</summary>
    public required ThreadCode? Drain { get; init; }

    /// <summary>What must hold.</summary>
    public required ImmutableArray<ExpectationSyntax> Expectations { get; init; }

    /// <summary>What a litmus test asks for; null for none.</summary>
    public required Expression? Exists { get; init; }

    /// <summary>For each <c>thread.result</c> of that condition the operation and the position of its result.</summary>
    public required ImmutableDictionary<string, (int Invocation, int Position)> ResultPositions { get; init; }

    /// <summary>Numbers of the file, for conditions over the end.</summary>
    public required ScenarioNames Names { get; init; }

    /// <summary>Places whose final value belongs to the outcome.</summary>
    public required ImmutableArray<int> Observed { get; init; }

    /// <summary>
    /// For each thread the first one that does exactly the same; itself when there is none before it.
    /// </summary>
    public required ImmutableArray<int> Twins { get; init; }

    /// <summary>Number of single places of memory.</summary>
    public int PlaceCount => Memory.Sum(memory => memory.Length);

    /// <summary>Whether the order of operations in time matters, and so belongs to the state.</summary>
    public bool TracksHistory => Expectations.Any(one => one.Kind == ExpectationKind.Linearizable);

    /// <summary>The shared name that a place belongs to.</summary>
    public SharedMemory MemoryAt(int place) =>
        Memory.First(memory => place >= memory.FirstPlace && place < memory.FirstPlace + memory.Length);
}
