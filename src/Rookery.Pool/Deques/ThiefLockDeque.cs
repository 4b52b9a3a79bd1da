namespace Rookery.Pool.Deques;

/// <summary>A deque whose thieves take turns by a lock, and whose owner takes it only when the ends meet.</summary>
/// <remarks>
/// The owner lowers <c>bottom</c>, has a full fence, and looks at <c>top</c>; a thief, holding the lock, raises
/// <c>top</c>, has a full fence, and looks at <c>bottom</c>. When they collide the thief steps back, and the owner asks
/// again with the lock. Source: M. Frigo, C. E. Leiserson and K. H. Randall, "The implementation of the Cilk-5
/// multithreaded language", PLDI 1998, section 5.
/// </remarks>
/// <typeparam name="TSteps">Told of each step: <see cref="NoSteps"/>, except in tests.</typeparam>
internal sealed class ThiefLockDeque<TSteps> : WorkQueue
    where TSteps : struct, IDequeSteps
{
    private readonly Lock _gate = new();
    private DequeFields _shared;

    /// <summary>Makes an empty deque.</summary>
    /// <param name="capacity">Slots to begin with, a power of two; one of them stays free.</param>
    public ThiefLockDeque(int capacity = 256) => _shared.Items = new int[capacity];

    /// <inheritdoc/>
    public override int Count
    {
        get
        {
            // order: acquire; a hint only, as in the lock-free deque.
            long top = Volatile.Read(ref _shared.Top);
            return (int)Math.Max(0, Volatile.Read(ref _shared.Bottom) - top);
        }
    }

    /// <inheritdoc/>
    public override void Push(int task)
    {
        TSteps.At(DequeStep.PushReadBottom);
        long bottom = _shared.Bottom;

        // order: acquire; the slot is written after. pairs with: a thief's store of top, which it makes before it
        // reads its slot; the spare slot below keeps the two apart. else: a slot that is still being read is written
        // over.
        TSteps.At(DequeStep.PushReadTop);
        if (bottom - Volatile.Read(ref _shared.Top) >= _shared.Items.Length - 1)
            Grow();
        TSteps.At(DequeStep.PushWriteItem);
        _shared.Items[bottom & (_shared.Items.Length - 1)] = task;

        // order: release; the slot may not move below. pairs with: the load of bottom in TrySteal. else: an empty slot.
        TSteps.At(DequeStep.PushWriteBottom);
        Volatile.Write(ref _shared.Bottom, bottom + 1);
    }

    /// <inheritdoc/>
    public override StealOutcome TryTake(out int task)
    {
        TSteps.At(DequeStep.TakeReadBottom);
        long bottom = _shared.Bottom - 1;

        // order: full, an exchange is store and fence in one. pairs with: the exchange in TrySteal. else: owner and
        // thief both get the task.
        TSteps.At(DequeStep.TakeWriteBottom);
        Interlocked.Exchange(ref _shared.Bottom, bottom);
        TSteps.At(DequeStep.TakeReadTop);
        if (Volatile.Read(ref _shared.Top) > bottom && !IsLeft(bottom))
        {
            task = -1;
            return StealOutcome.Empty;
        }

        TSteps.At(DequeStep.TakeReadItem);
        task = _shared.Items[bottom & (_shared.Items.Length - 1)];
        return StealOutcome.Taken;
    }

    /// <inheritdoc/>
    public override StealOutcome TrySteal(out int task)
    {
        task = -1;
        TSteps.At(DequeStep.StealReadTop);
        if (Count == 0)
            return StealOutcome.Empty;
        TSteps.At(DequeStep.EnterLock);
        TSteps.Enter(_gate);
        try
        {
            long top = _shared.Top;

            // order: full, as in TryTake. pairs with: the exchange there. else: as there.
            TSteps.At(DequeStep.StealRaiseTop);
            Interlocked.Exchange(ref _shared.Top, top + 1);
            TSteps.At(DequeStep.StealReadBottom);
            if (top + 1 > Volatile.Read(ref _shared.Bottom))
            {
                TSteps.At(DequeStep.StealRestoreTop);
                Volatile.Write(ref _shared.Top, top);
                return StealOutcome.Empty;
            }

            TSteps.At(DequeStep.StealReadItem);
            task = _shared.Items[top & (_shared.Items.Length - 1)];
            return StealOutcome.Taken;
        }
        finally
        {
            TSteps.Exit(_gate);
        }
    }

    /// <summary>Whether a thief that stood in the owner's way stepped back; if not, bottom goes back too.</summary>
    private bool IsLeft(long bottom)
    {
        TSteps.At(DequeStep.EnterLock);
        TSteps.Enter(_gate);
        try
        {
            // With the lock nobody has raised top for a look; what it says now is final.
            TSteps.At(DequeStep.TakeContest);
            if (_shared.Top <= bottom)
                return true;
            TSteps.At(DequeStep.TakeRestoreBottom);
            Volatile.Write(ref _shared.Bottom, bottom + 1);
            return false;
        }
        finally
        {
            TSteps.Exit(_gate);
        }
    }

    private void Grow()
    {
        // The lock keeps thieves out, who read slots with it.
        TSteps.At(DequeStep.EnterLock);
        TSteps.Enter(_gate);
        try
        {
            int[] old = _shared.Items;
            var items = new int[old.Length * 2];
            for (long i = _shared.Top; i < _shared.Bottom; i++)
                items[i & (items.Length - 1)] = old[i & (old.Length - 1)];
            _shared.Items = items;
        }
        finally
        {
            TSteps.Exit(_gate);
        }
    }
}
