namespace Rookery.Pool;

/// <summary>How a worker's deque is kept safe between its owner and thieves.</summary>
public enum DequeKind
{
    /// <summary>No lock: an owner pays at most a fence, thieves a compare-and-swap (the default).</summary>
    LockFree,

    /// <summary>Thieves take turns by a lock; the owner takes it only when the two ends meet.</summary>
    ThiefLock,

    /// <summary>One lock for every operation of owner and thieves.</summary>
    OneLock,
}
