namespace Rookery.Pool.Workers;

/// <summary>Why a run is to stop.</summary>
internal enum StopReason
{
    /// <summary>It is not.</summary>
    None,

    /// <summary>Its caller cancelled it.</summary>
    Cancelled,

    /// <summary>Its time is over.</summary>
    TimeOver,

    /// <summary>The pool is being disposed.</summary>
    Disposed,

    /// <summary>Its workers wait for tasks that none of them may run.</summary>
    Starved,
}
