namespace Rookery.Traces.Auditing;

/// <summary>What the audit knows of a task that was made and has not ended.</summary>
/// <remarks>
/// A class with links in it, so that queues and lists of children need no memory of their own. Mutable.
/// </remarks>
internal sealed class TaskLife(int number)
{
    /// <summary>The task's number.</summary>
    public int Number { get; } = number;

    /// <summary>The task that forked or called it; null for the root, or when that is unknown.</summary>
    public TaskLife? Parent { get; set; }

    /// <summary>Whether it was called, not forked.</summary>
    public bool IsCalled { get; set; }

    /// <summary>Whether a fork, a call or being the root explains it.</summary>
    public bool IsMade { get; set; }

    /// <summary>Whether it has begun.</summary>
    public bool HasBegun { get; set; }

    /// <summary>Whether it is at a join.</summary>
    public bool IsWaiting { get; set; }

    /// <summary>Whether it has left its worker at a join.</summary>
    public bool IsSuspended { get; set; }

    /// <summary>Forked children that have not ended.</summary>
    public int ChildrenLeft { get; set; }

    /// <summary>Children forked since the last join.</summary>
    public long ForkedSinceJoin { get; set; }

    /// <summary>The worker on whose stack it is the top of a chain of callers; null otherwise.</summary>
    public WorkerLife? On { get; set; }

    /// <summary>
    /// For the first task of a chain of calls (the one that was forked): the worker that has the chain in hand, on its
    /// stack or in its deque; null while the chain is in the shared queue or suspended.
    /// </summary>
    public WorkerLife? Holder { get; set; }

    /// <summary>The first task of the chain of calls in which it stands: itself when it was not called.</summary>
    public TaskLife ChainStart => _chainStart ?? this;

    private TaskLife? _chainStart;

    /// <summary>The queue in which it stands; null otherwise.</summary>
    public TaskQueue? Queue { get; set; }

    /// <summary>Neighbour towards the top of the queue.</summary>
    public TaskLife? Above { get; set; }

    /// <summary>Neighbour towards the bottom of the queue.</summary>
    public TaskLife? Below { get; set; }

    /// <summary>The last forked child that has not ended.</summary>
    public TaskLife? LastChild { get; private set; }

    /// <summary>Length of the longest chain of work up to where the task is now.</summary>
    public long Path { get; set; }

    /// <summary>
    /// Length of the longest chain of work up to the end of a forked child that has ended since the last join.
    /// </summary>
    public long ChildrenPath { get; set; }

    private TaskLife? _siblingBefore;
    private TaskLife? _siblingAfter;

    /// <summary>The forked children that have not ended.</summary>
    public IEnumerable<TaskLife> Children()
    {
        for (TaskLife? child = LastChild; child is not null; child = child._siblingBefore)
            yield return child;
    }

    /// <summary>Makes this a forked child of a task.</summary>
    public void BecomeForked(TaskLife parent)
    {
        Parent = parent;
        IsMade = true;
        Path = parent.Path;
        parent.ChildrenLeft++;
        parent.ForkedSinceJoin++;
        _siblingBefore = parent.LastChild;
        if (parent.LastChild is { } last)
            last._siblingAfter = this;
        parent.LastChild = this;
    }

    /// <summary>Makes this a callee of a task.</summary>
    public void BecomeCalled(TaskLife caller)
    {
        Parent = caller;
        IsMade = true;
        IsCalled = true;
        Path = caller.Path;
        _chainStart = caller.ChainStart;
    }

    /// <summary>Takes an ended child out of its parent's account.</summary>
    public void LeaveParent()
    {
        if (IsCalled || Parent is not { } parent)
            return;
        parent.ChildrenLeft--;
        parent.ChildrenPath = Math.Max(parent.ChildrenPath, Path);
        if (_siblingAfter is { } after)
            after._siblingBefore = _siblingBefore;
        else
            parent.LastChild = _siblingBefore;
        if (_siblingBefore is { } before)
            before._siblingAfter = _siblingAfter;
    }
}
