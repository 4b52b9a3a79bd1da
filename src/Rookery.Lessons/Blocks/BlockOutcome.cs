using System.Collections.Immutable;

namespace Rookery.Lessons.Blocks;

/// <summary>What became of computing a block: its result, or everything that is wrong.</summary>
/// <param name="Result">The result; null when there are problems.</param>
/// <param name="Problems">What is wrong; empty when there is a result.</param>
public sealed record BlockOutcome(BlockResult? Result, ImmutableArray<Problem> Problems)
{
    /// <summary>Success.</summary>
    public static BlockOutcome Good(BlockResult result) => new(result, []);

    /// <summary>Failure.</summary>
    public static BlockOutcome Bad(params ImmutableArray<Problem> problems) => new(null, problems);
}
