namespace Rookery.Pool.Deques;

/// <summary>
/// A deque behind one lock, which every operation of owner and thieves takes; either may use either end.
/// </summary>
/// <remarks>For comparison, and for the ends that the lock-free deque does not offer.</remarks>
internal sealed class OneLockDeque(OwnerTakes owner, ThiefTakes thief) : WorkQueue
{
    private readonly Lock _gate = new();
    private int[] _items = new int[256];
    private long _top;
    private long _bottom;

    /// <inheritdoc/>
    public override int Count
    {
        get
        {
            lock (_gate)
                return (int)(_bottom - _top);
        }
    }

    /// <inheritdoc/>
    public override void Push(int task)
    {
        lock (_gate)
        {
            if (_bottom - _top == _items.Length)
                GrowNeedsLock();
            _items[_bottom & (_items.Length - 1)] = task;
            _bottom++;
            DrawTicketNeedsLock();
        }
    }

    /// <inheritdoc/>
    public override StealOutcome TryTake(out int task) => TryRemove(owner == OwnerTakes.Newest, out task);

    /// <inheritdoc/>
    public override StealOutcome TrySteal(out int task) => TryRemove(thief == ThiefTakes.Newest, out task);

    private StealOutcome TryRemove(bool isBottom, out int task)
    {
        lock (_gate)
        {
            if (_top == _bottom)
            {
                task = -1;
                return StealOutcome.Empty;
            }

            long index = isBottom ? --_bottom : _top++;
            DrawTicketNeedsLock();
            task = _items[index & (_items.Length - 1)];
            return StealOutcome.Taken;
        }
    }

    private void GrowNeedsLock()
    {
        var items = new int[_items.Length * 2];
        for (long i = _top; i < _bottom; i++)
            items[i & (items.Length - 1)] = _items[i & (_items.Length - 1)];
        _items = items;
    }
}
