namespace Rookery.Simulation.Engine;

/// <summary>What a worker will do when its time comes.</summary>
internal enum WorkerPhase : byte
{
    /// <summary>Find something: pass a join, take an own task, look at a victim.</summary>
    Seek,

    /// <summary>Go on with the current task.</summary>
    Run,

    /// <summary>Start or resume the item that it has taken or stolen: its cost is paid.</summary>
    Start,

    /// <summary>Finish the contest with thieves for the end of its own deque.</summary>
    Contest,

    /// <summary>Finish a look at a victim: take what it saw, if that is still there.</summary>
    Look,

    /// <summary>Its turn at the shared queue has come: take.</summary>
    TakeTurn,

    /// <summary>Watches the empty shared queue; a time, if it has one, is that of going to sleep.</summary>
    Watch,

    /// <summary>Sleeps until a fork or the end of an awaited child wakes it.</summary>
    Asleep,

    /// <summary>Waits at a join and can do nothing else; the end of the last child wakes it.</summary>
    Waiting,

    /// <summary>Has been signalled; runs when its time comes.</summary>
    Waking,

    /// <summary>Its task waits for something outside the processor.</summary>
    Blocked,

    /// <summary>Has nobody to steal from.</summary>
    Alone,

    /// <summary>A thread whose task has ended.</summary>
    Gone,
}
