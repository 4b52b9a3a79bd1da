using Rookery.Notation;

namespace Rookery.Programs;

/// <summary>What a program costs, whatever schedule runs it.</summary>
/// <remarks>
/// Source of work and span: Cormen, Leiserson, Rivest, Stein, Introduction to Algorithms, 3rd ed. 2009, section 27.1.
/// </remarks>
/// <param name="Tasks">Tasks begun, the first, the forked and the called.</param>
/// <param name="Forks">Tasks forked.</param>
/// <param name="Work">Units of computing of all tasks, T1.</param>
/// <param name="Span">Units along the longest path through the task graph, waiting included, Tinf.</param>
/// <param name="Deepest">Most tasks inside one another, the first counted as 1.</param>
public sealed record Analysis(long Tasks, long Forks, long Work, long Span, long Deepest)
{
    /// <summary>
    /// Work divided by span: more workers than this cannot all be kept busy. Null when the span is 0.
    /// </summary>
    public Fraction? Parallelism => Span == 0 ? null : Fraction.Of(Work, Span);
}
