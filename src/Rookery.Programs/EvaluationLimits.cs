namespace Rookery.Programs;

/// <summary>How far a program may go before it is stopped with an error that names the limit.</summary>
/// <param name="Tasks">Tasks begun in one run, the first included (<c>--limit-tasks</c>).</param>
/// <param name="Depth">Tasks inside one another, the first counted as 1 (<c>--limit-depth</c>).</param>
/// <param name="Steps">Instructions from one action of a task to its next (<c>--limit-steps</c>).</param>
/// <param name="Actions">Actions of all tasks together in one run (<c>--limit-actions</c>).</param>
/// <param name="Live">Tasks that have been made and have not ended, at any one time (<c>--limit-live</c>).</param>
public sealed record EvaluationLimits(
    long Tasks = 100_000_000,
    int Depth = 10_000,
    long Steps = 100_000_000,
    long Actions = 1_000_000_000,
    int Live = 10_000_000)
{
    /// <summary>The limits when nothing else is said.</summary>
    public static EvaluationLimits Default { get; } = new();
}
