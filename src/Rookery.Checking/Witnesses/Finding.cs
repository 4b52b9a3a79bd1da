using System.Collections.Immutable;

namespace Rookery.Checking.Witnesses;

/// <summary>What an execution shows: facts, nothing in words.</summary>
/// <remarks>What its property does not name is as by default. <see cref="Words.CheckerWords"/> says it.</remarks>
/// <param name="Broken">What is not kept; null when it is what a litmus test asks for.</param>
public sealed record Finding(Property? Broken)
{
    /// <summary>The line that fails; 0 for none.</summary>
    public int Line { get; init; }

    /// <summary>Why a computation has no result (<see cref="Property.Computation"/>).</summary>
    public ComputationTrouble Trouble { get; init; }

    /// <summary>The items that are lost, or the one that is taken out too often.</summary>
    public ImmutableArray<long> Items { get; init; } = [];

    /// <summary>What the owner found, emptying the deque afterwards (<see cref="Property.NothingLost"/>).</summary>
    public ImmutableArray<long> Drained { get; init; } = [];

    /// <summary>Whether the item that is taken out too often was ever put in.</summary>
    public bool WasPut { get; init; }

    /// <summary>Who took it out, in order: the operation as it is called, and its thread; both empty for the owner
    /// who empties the deque afterwards.</summary>
    public ImmutableArray<(string Call, string Thread)> Takers { get; init; } = [];

    /// <summary>Who waits in which line (<see cref="Property.NoDeadlock"/>).</summary>
    public ImmutableArray<(string Thread, int Line)> Waiting { get; init; } = [];
}
