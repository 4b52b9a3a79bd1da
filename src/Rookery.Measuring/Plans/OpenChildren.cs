using Rookery.Pool;

namespace Rookery.Measuring.Plans;

/// <summary>
/// The open children of one task, on a stack that all tasks of a thread share, so that nothing is allocated.
/// </summary>
/// <remarks>
/// Tasks that a worker runs on top of a waiting one put theirs on top and take them off before they end. After a run
/// that
/// failed the stack may hold leavings; the next run begins above them, and its first task clears it.
/// </remarks>
internal readonly ref struct OpenChildren(OpenChildren.Stack stack)
{
    [ThreadStatic]
    private static Stack? s_here;

    private readonly Stack _stack = stack;
    private readonly int _floor = stack.Count;

    /// <summary>This thread's stack.</summary>
    public static Stack Here() => s_here ??= new();

    /// <summary>Adds a child.</summary>
    public void Push(Forked<PoolTask, Nothing> child) => _stack.Push(child);

    /// <summary>Takes the youngest of this task's children off.</summary>
    public bool TryPop(out Forked<PoolTask, Nothing> child)
    {
        bool isThere = _stack.Count > _floor;
        child = isThere ? _stack.Pop() : default;
        return isThere;
    }

    /// <summary>The children of all tasks on a thread.</summary>
    internal sealed class Stack : Stack<Forked<PoolTask, Nothing>>;
}
