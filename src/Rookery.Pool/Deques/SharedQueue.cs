namespace Rookery.Pool.Deques;

/// <summary>One queue for all workers, first in first out, behind one lock.</summary>
internal sealed class SharedQueue : WorkQueue
{
    private readonly Lock _gate = new();
    private readonly Queue<int> _tasks = new();
    private int _count;

    /// <inheritdoc/>
    public override int Count => Volatile.Read(ref _count);

    /// <inheritdoc/>
    public override void Push(int task)
    {
        lock (_gate)
        {
            _tasks.Enqueue(task);
            DrawTicketNeedsLock();
            Volatile.Write(ref _count, _tasks.Count);
        }
    }

    /// <inheritdoc/>
    public override StealOutcome TryTake(out int task)
    {
        lock (_gate)
        {
            bool isTaken = _tasks.TryDequeue(out task);
            if (isTaken)
                DrawTicketNeedsLock();
            Volatile.Write(ref _count, _tasks.Count);
            if (!isTaken)
                task = -1;
            return isTaken ? StealOutcome.Taken : StealOutcome.Empty;
        }
    }

    /// <inheritdoc/>
    public override StealOutcome TrySteal(out int task) => TryTake(out task);
}
