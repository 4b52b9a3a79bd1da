namespace Rookery.Checking;

/// <summary>What a read may see of what other threads have written; defined in docs/checker.md.</summary>
public enum MemoryModel
{
    /// <summary>Sequential consistency: all accesses follow one another, each read sees the last write.</summary>
    Sc,

    /// <summary>Total store order: each thread's writes wait in a queue of its own before others see them.</summary>
    Tso,

    /// <summary>Partial store order: writes to different places leave that queue in any order.</summary>
    Pso,

    /// <summary>Release and acquire: each thread has its own view of how far each place has come.</summary>
    Ra,
}
