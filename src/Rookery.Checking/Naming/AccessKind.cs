namespace Rookery.Checking.Naming;

/// <summary>What a step does to shared memory.</summary>
internal enum AccessKind
{
    /// <summary>Reads a place.</summary>
    Load,

    /// <summary>Writes a place.</summary>
    Store,

    /// <summary>Writes a place if it holds what is expected, in one step; gives 1 or 0.</summary>
    CompareAndSwap,

    /// <summary>Adds to a place in one step; gives the old value.</summary>
    Add,

    /// <summary>Writes a place in one step; gives the old value.</summary>
    Swap,

    /// <summary>Orders what stands before and after it.</summary>
    Fence,

    /// <summary>Waits until a lock is free, and takes it.</summary>
    Lock,

    /// <summary>Gives a lock back.</summary>
    Unlock,
}
