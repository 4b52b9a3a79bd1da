namespace Rookery.Pool.Deques;

/// <summary>
/// A deque behind one lock, which every operation of owner and thieves takes; either may use either end.
/// </summary>
/// <remarks>For comparison, and for the ends that the lock-free deque does not offer.</remarks>
/// <typeparam name="TSteps">Told of each step: <see cref="NoSteps"/>, except in tests.</typeparam>
internal sealed class OneLockDeque<TSteps>(OwnerTakes owner, ThiefTakes thief, int capacity = 256) : WorkQueue
    where TSteps : struct, IDequeSteps
{
    private readonly Lock _gate = new();
    private int[] _items = new int[capacity];
    private long _top;
    private long _bottom;

    /// <inheritdoc/>
    public override int Count
    {
        get
        {
            TSteps.Enter(_gate);
            int count = (int)(_bottom - _top);
            TSteps.Exit(_gate);
            return count;
        }
    }

    /// <inheritdoc/>
    public override void Push(int task)
    {
        TSteps.At(DequeStep.EnterLock);
        TSteps.Enter(_gate);
        try
        {
            if (_bottom - _top == _items.Length)
                GrowNeedsLock();
            TSteps.At(DequeStep.PushWriteItem);
            _items[_bottom & (_items.Length - 1)] = task;
            TSteps.At(DequeStep.PushWriteBottom);
            _bottom++;
            DrawTicketNeedsLock();
        }
        finally
        {
            TSteps.Exit(_gate);
        }
    }

    /// <inheritdoc/>
    public override StealOutcome TryTake(out int task) => TryRemove(owner == OwnerTakes.Newest, out task);

    /// <inheritdoc/>
    public override StealOutcome TrySteal(out int task) => TryRemove(thief == ThiefTakes.Newest, out task);

    private StealOutcome TryRemove(bool isBottom, out int task)
    {
        TSteps.At(DequeStep.EnterLock);
        TSteps.Enter(_gate);
        try
        {
            TSteps.At(DequeStep.StealReadTop);
            if (_top == _bottom)
            {
                task = -1;
                return StealOutcome.Empty;
            }

            TSteps.At(isBottom ? DequeStep.TakeWriteBottom : DequeStep.StealRaiseTop);
            long index = isBottom ? --_bottom : _top++;
            DrawTicketNeedsLock();
            TSteps.At(DequeStep.StealReadItem);
            task = _items[index & (_items.Length - 1)];
            return StealOutcome.Taken;
        }
        finally
        {
            TSteps.Exit(_gate);
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
