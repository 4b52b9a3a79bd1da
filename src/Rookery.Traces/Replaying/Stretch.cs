namespace Rookery.Traces.Replaying;

/// <summary>What a worker does from one of its events to its next (docs/trace.md, "A stretch").</summary>
public enum Stretch : byte
{
    /// <summary>Paying for scheduling: queueing, taking, moving a task. Often of length 0.</summary>
    Scheduling,

    /// <summary>Computing for a task: the only stretch that counts as work.</summary>
    Working,

    /// <summary>Looking for something to do.</summary>
    Searching,

    /// <summary>Held by a task that waits for something outside the processor; uses no core.</summary>
    Blocked,

    /// <summary>Asleep; uses no core.</summary>
    Asleep,

    /// <summary>Off its core: not started yet, preempted, or done.</summary>
    Off,
}
