namespace Rookery.Traces.Replaying;

/// <summary>One turn in the life of a task.</summary>
/// <param name="Step">Step of the event: <c>Narrator.Sentence(Step)</c> tells it in words.</param>
/// <param name="Time">When, in the trace's unit.</param>
/// <param name="Turn">What happened.</param>
/// <param name="Worker">On which worker: that of the parent for a fork, the thief for a steal.</param>
/// <param name="Other">
/// The parent or caller for <see cref="TaskTurn.Forked"/> and <see cref="TaskTurn.Called"/>, the victim for
/// <see cref="TaskTurn.Stolen"/>; -1 for any other.
/// </param>
/// <param name="IsQueued">
/// Whether the task, or its rest, lies in a queue from then on: the deque of <paramref name="Worker"/>, or the queue
/// that all share.
/// </param>
public readonly record struct HistoryEntry(
    int Step, long Time, TaskTurn Turn, int Worker, int Other, bool IsQueued);
