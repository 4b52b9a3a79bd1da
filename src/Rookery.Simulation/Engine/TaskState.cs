namespace Rookery.Simulation.Engine;

/// <summary>What the engine knows of one live activation; recycled with it.</summary>
internal struct TaskState
{
    /// <summary>Number of the task in the trace.</summary>
    public int Id;

    /// <summary>Activation of its parent; -1 for the root.</summary>
    public int Parent;

    /// <summary>Children forked and not ended.</summary>
    public int Outstanding;

    /// <summary>Newest of the children that have not ended, as a list through the siblings; -1 for none.</summary>
    public int NewestChild;

    /// <summary>Siblings in that list; -1 for none.</summary>
    public int OlderSibling;
    public int NewerSibling;

    /// <summary>The worker that runs it, holds it in its deque, or waits with it.</summary>
    public int Holder;

    /// <summary>Line of the join at which it waits.</summary>
    public int JoinLine;

    /// <summary>Whether it was called rather than forked.</summary>
    public bool IsCalled;

    /// <summary>Whether its first strand has started.</summary>
    public bool HasBegun;

    /// <summary>Whether it forked something since its last join.</summary>
    public bool HasForked;

    /// <summary>Whether it waits at a join.</summary>
    public bool IsWaiting;
}
