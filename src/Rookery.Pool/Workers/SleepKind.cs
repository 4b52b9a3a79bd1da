namespace Rookery.Pool.Workers;

/// <summary>What a sleeping worker could do if it were woken.</summary>
internal enum SleepKind
{
    /// <summary>Anything: it has no task.</summary>
    Free,

    /// <summary>Tasks, on top of the one that waits; no new run.</summary>
    AtJoin,

    /// <summary>Nothing but go on with its own task.</summary>
    Blocked,
}
