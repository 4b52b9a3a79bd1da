namespace Rookery.Pool;

/// <summary>Where queued tasks wait.</summary>
public enum Queues
{
    /// <summary>A deque for each worker (the default).</summary>
    PerWorker,

    /// <summary>One queue for all, first in first out, behind one lock.</summary>
    Shared,
}
