namespace Rookery.Pool;

/// <summary>Who is woken when a task is queued.</summary>
public enum WakePolicy
{
    /// <summary>The worker that has slept longest (the default).</summary>
    One,

    /// <summary>All that sleep.</summary>
    All,
}
