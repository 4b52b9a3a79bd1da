namespace Rookery.Traces;

/// <summary>
/// What an event says. Each event opens a stretch on its worker that lasts until that worker's next event.
/// </summary>
/// <remarks>The full meaning, with the fields of each kind, is in docs/trace.md. The words in files are lower
/// case.</remarks>
public enum EventKind : byte
{
    /// <summary>A task's first strand starts on this worker.</summary>
    Begin,

    /// <summary>A task has done everything, and all that it forked has ended.</summary>
    End,

    /// <summary>The worker computes for the task until the worker's next event.</summary>
    Work,

    /// <summary>The task forks a child: the child (or the parent's continuation) is queued.</summary>
    Fork,

    /// <summary>The task calls another task inline: the callee begins next on this worker.</summary>
    Call,

    /// <summary>The worker takes a task from its own deque, or from the one queue that all share.</summary>
    Take,

    /// <summary>A thief looks at the end of a victim's deque where thieves take.</summary>
    Probe,

    /// <summary>A task moves from a victim's deque to the thief.</summary>
    Steal,

    /// <summary>What the worker had seen was gone, or was taken by another first.</summary>
    LostRace,

    /// <summary>The thief saw nothing at its victim.</summary>
    Empty,

    /// <summary>The task is at a join and some forked child has not ended.</summary>
    JoinWait,

    /// <summary>All children forked so far have ended: the task goes on past its join.</summary>
    JoinPass,

    /// <summary>The task waits for something outside the processor; it holds its worker but no core.</summary>
    Block,

    /// <summary>What the task waited for outside the processor has come.</summary>
    Unblock,

    /// <summary>The worker goes to sleep and gives up its core.</summary>
    Sleep,

    /// <summary>The worker runs again after sleeping.</summary>
    Wake,

    /// <summary>The worker leaves its core: the run is over, or another worker's time slice has come.</summary>
    Stop,
}
