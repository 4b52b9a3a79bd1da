namespace Rookery.Checking.Witnesses;

/// <summary>What a thread does within a step; <see cref="Arrive"/> is memory's alone.</summary>
public enum DeedKind
{
    /// <summary>Begins <see cref="Deed.Call"/>.</summary>
    Begin,

    /// <summary>Ends <see cref="Deed.Call"/> and returns <see cref="Deed.Result"/>, if there is one.</summary>
    Return,

    /// <summary>Reads <see cref="Deed.Value"/>.</summary>
    Load,

    /// <summary>Reads what waits in its own store buffer.</summary>
    LoadOwn,

    /// <summary>Reads from memory, where the write in the buffer of <see cref="Deed.Holder"/> is missing.</summary>
    LoadPast,

    /// <summary>Reads an older value, though <see cref="Deed.Newest"/> has been written.</summary>
    LoadOlder,

    /// <summary>Writes <see cref="Deed.Value"/>.</summary>
    Store,

    /// <summary>Puts a write into its store buffer.</summary>
    StoreBuffered,

    /// <summary>Finds <see cref="Deed.Former"/> and writes <see cref="Deed.Value"/> in its place.</summary>
    CompareAndSwap,

    /// <summary>Does not find <see cref="Deed.Former"/>, so that nothing is written.</summary>
    CompareAndSwapFailed,

    /// <summary>Adds <see cref="Deed.Value"/> to what was <see cref="Deed.Former"/>.</summary>
    Add,

    /// <summary>Writes <see cref="Deed.Value"/> over what was <see cref="Deed.Former"/>.</summary>
    Swap,

    /// <summary>Takes a lock.</summary>
    Lock,

    /// <summary>Gives a lock back.</summary>
    Unlock,

    /// <summary>Passes an acquire fence.</summary>
    AcquireFence,

    /// <summary>Passes a release fence.</summary>
    ReleaseFence,

    /// <summary>Passes a full fence.</summary>
    FullFence,

    /// <summary>A write from the buffer of <see cref="Deed.Holder"/> reaches memory.</summary>
    Arrive,
}
