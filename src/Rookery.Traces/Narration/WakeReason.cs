namespace Rookery.Traces.Narration;

/// <summary>Why a sleeping worker was woken, as far as the trace bears it out.</summary>
internal enum WakeReason : byte
{
    /// <summary>Not known: nothing is said.</summary>
    Unknown,

    /// <summary>A fork has queued something.</summary>
    Fork,

    /// <summary>The children that it waits for have ended.</summary>
    ChildrenEnded,
}
