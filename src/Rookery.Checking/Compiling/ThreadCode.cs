using System.Collections.Immutable;

namespace Rookery.Checking.Compiling;

/// <summary>All that one thread of a scenario does, its operations put one after the other.</summary>
internal sealed class ThreadCode
{
    /// <summary>Its name in the scenario.</summary>
    public required string Name { get; init; }

    /// <summary>Its instructions.</summary>
    public required Instruction[] Code { get; init; }

    /// <summary>Its shared accesses.</summary>
    public required Access[] Accesses { get; init; }

    /// <summary>Results of its returns.</summary>
    public required ResultOperand[] Operands { get; init; }

    /// <summary>Its registers as they are before the first instruction: constants are in their places.</summary>
    public required long[] Registers { get; init; }

    /// <summary>Where it waits; the last one is the end.</summary>
    public required StepPoint[] Points { get; init; }

    /// <summary>For each point the operation's own names whose values can still matter, one bit each.</summary>
    public required uint[] Live { get; init; }

    /// <summary>How many registers hold names of its own.</summary>
    public required int LocalCount { get; init; }

    /// <summary>For each operation that it runs the names of its own, by register.</summary>
    public required ImmutableArray<ImmutableArray<string>> LocalNames { get; init; }

    /// <summary>The instruction with which each of its operations begins.</summary>
    public required int[] Entries { get; init; }

    /// <summary>The operations that it runs.</summary>
    public required ImmutableArray<Invocation> Invocations { get; init; }

    /// <summary>The point at which it has ended.</summary>
    public int End => Points.Length - 1;
}
