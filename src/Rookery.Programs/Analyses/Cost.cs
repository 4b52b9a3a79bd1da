namespace Rookery.Programs.Analyses;

/// <summary>What one task costs with everything below it.</summary>
/// <param name="Work">Units of computing.</param>
/// <param name="Span">Longest path.</param>
/// <param name="Tasks">Tasks, itself included.</param>
/// <param name="Forks">Forks below it.</param>
/// <param name="Deepest">Most tasks inside one another, itself counted as 1.</param>
/// <param name="Magnitude">Size of the largest value below it that moves with a shift of its arguments.</param>
internal readonly record struct Cost(
    long Work, long Span, long Tasks, long Forks, long Deepest, ulong Magnitude);
