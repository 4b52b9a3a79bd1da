namespace Rookery.Traces.Narration;

/// <summary>How a task that begins came to its worker.</summary>
internal enum Arrival : byte
{
    /// <summary>The trace does not say.</summary>
    Unknown,

    /// <summary>It is the start of the program.</summary>
    Start,

    /// <summary>It was called on this worker.</summary>
    Called,

    /// <summary>It was forked on this worker, and the child runs first.</summary>
    RunsFirst,

    /// <summary>The worker took it from its own deque or the shared queue.</summary>
    Taken,

    /// <summary>The worker stole it.</summary>
    Stolen,

    /// <summary>It has a thread of its own.</summary>
    OwnThread,
}
