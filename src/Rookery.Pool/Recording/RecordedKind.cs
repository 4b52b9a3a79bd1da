namespace Rookery.Pool.Recording;

/// <summary>What an event of a recorded run says; the words and meanings of docs/trace.md.</summary>
public enum RecordedKind
{
    /// <summary>A task's first strand starts on this worker.</summary>
    Begin,

    /// <summary>A task has done everything.</summary>
    End,

    /// <summary>The worker computes for the task.</summary>
    Work,

    /// <summary>The task forks a child, which is queued.</summary>
    Fork,

    /// <summary>The task calls another.</summary>
    Call,

    /// <summary>The worker takes a task from its own queue.</summary>
    Take,

    /// <summary>A thief looks at a victim.</summary>
    Probe,

    /// <summary>A task moves from a victim to the thief.</summary>
    Steal,

    /// <summary>Nothing was there.</summary>
    Empty,

    /// <summary>A task was seen, and somebody else took it.</summary>
    LostRace,

    /// <summary>The task waits at a join.</summary>
    JoinWait,

    /// <summary>The task goes on past its join.</summary>
    JoinPass,

    /// <summary>The task waits for something outside the processor.</summary>
    Block,

    /// <summary>That has come.</summary>
    Unblock,

    /// <summary>The worker sleeps.</summary>
    Sleep,

    /// <summary>It runs again.</summary>
    Wake,

    /// <summary>The run is over for this worker.</summary>
    Stop,
}
