namespace Rookery.Traces.Replaying;

/// <summary>What happens to a task in the course of its life.</summary>
public enum TaskTurn : byte
{
    /// <summary>Its parent forks it.</summary>
    Forked,

    /// <summary>Its caller calls it.</summary>
    Called,

    /// <summary>It forks a child that runs first: its own rest is queued.</summary>
    RestQueued,

    /// <summary>A worker takes it, or its rest, from its own deque or from the queue that all share.</summary>
    Taken,

    /// <summary>A thief takes it, or its rest.</summary>
    Stolen,

    /// <summary>Its first strand starts.</summary>
    Begun,

    /// <summary>It waits at a join.</summary>
    Waits,

    /// <summary>It goes on past the join at which it waited.</summary>
    GoesOn,

    /// <summary>It waits for something outside the processor.</summary>
    Blocked,

    /// <summary>What it waited for outside the processor has come.</summary>
    Unblocked,

    /// <summary>It has done everything, and so has all that it forked.</summary>
    Ended,
}
