namespace Rookery.Pool;

/// <summary>What a worker does at a join whose child another worker runs.</summary>
public enum AtJoin
{
    /// <summary>Runs other tasks until the child is done: own ones, then stolen ones (the default).</summary>
    Help,

    /// <summary>Own tasks, then steals only from the worker that has the awaited child.</summary>
    Leapfrog,

    /// <summary>Blocks. A pool whose workers all wait for queued tasks has starved, and says so.</summary>
    Wait,
}
