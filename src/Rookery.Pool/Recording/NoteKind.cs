namespace Rookery.Pool.Recording;

/// <summary>What a worker notes while it runs; each becomes one or more events of the trace afterwards.</summary>
internal enum NoteKind
{
    /// <summary>The first task of the run begins.</summary>
    Root,

    /// <summary>A child was queued.</summary>
    Fork,

    /// <summary>The worker waits at a join for a child.</summary>
    Wait,

    /// <summary>At a join, the worker took the awaited child from its own queue and runs it.</summary>
    TakeAwaited,

    /// <summary>The worker took a task from its own queue and runs it.</summary>
    Take,

    /// <summary>A task was moved from a victim.</summary>
    Steal,

    /// <summary>The worker begins the task that it stole.</summary>
    Begin,

    /// <summary>A task called another.</summary>
    Call,

    /// <summary>A task ended.</summary>
    End,

    /// <summary>The task is past the join of one child.</summary>
    Pass,

    /// <summary>
    /// A task that its parent ran at the join ended, and the parent is past that join: <see cref="Note.Other"/> is the
    /// parent, <see cref="Note.Ticket"/> its line.
    /// </summary>
    EndAndPass,

    /// <summary>The task computes on.</summary>
    Work,

    /// <summary>The task waits for something outside the processor.</summary>
    Block,

    /// <summary>That has come.</summary>
    Unblock,

    /// <summary>A look at a victim, or into the shared queue, found nothing.</summary>
    Empty,

    /// <summary>
    /// A task was seen at a victim, or by an owner at its last one, and somebody else was quicker; rare.
    /// </summary>
    LostRace,

    /// <summary>The worker falls asleep.</summary>
    Sleep,

    /// <summary>It runs again.</summary>
    Wake,
}
