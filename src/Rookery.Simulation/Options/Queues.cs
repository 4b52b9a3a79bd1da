namespace Rookery.Simulation;

/// <summary>Where queued tasks wait.</summary>
/// <remarks>The first value is the default.</remarks>
public enum Queues : byte
{
    /// <summary><c>per-worker</c>: A deque for each worker.</summary>
    [OptionWord("per-worker")]
    PerWorker,

    /// <summary><c>shared</c>: One queue for all workers.</summary>
    [OptionWord("shared")]
    Shared,

    /// <summary><c>none</c>: No queue: a thread for each forked task.</summary>
    [OptionWord("none")]
    None,
}
