namespace Rookery.Simulation;

/// <summary>One worker's wait in a starved run.</summary>
/// <param name="Worker">The worker.</param>
/// <param name="Task">The task that waits on it.</param>
/// <param name="Line">Line of the join.</param>
/// <param name="AwaitedTask">A child that has not ended.</param>
/// <param name="IsQueued">Whether that child still stands in a queue; otherwise it waits at a join of its own.</param>
/// <param name="HeldBy">The worker that holds the child; -1 for the queue of all.</param>
public sealed record StarvedWait(int Worker, int Task, int Line, int AwaitedTask, bool IsQueued, int HeldBy);
