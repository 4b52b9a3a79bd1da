using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace Rookery.Pool.Deques;

/// <summary>A growable circular deque without locks: its owner works at the bottom, thieves take at the top.</summary>
/// <remarks>
/// <para>
/// The array is a ring of slots, and two counters say which of them are in use: <c>top</c>, the oldest task, up to, not
/// including, <c>bottom</c>. Only the owner moves <c>bottom</c>; whoever takes the task at <c>top</c> moves that up
/// by a
/// compare-and-swap, so that two can never have the same one. As long as two tasks or more are in the deque the owner
/// needs no such contest: it lowers <c>bottom</c> first and looks at <c>top</c> then, and a thief looks at <c>top</c>
/// first and at <c>bottom</c> then; with a full fence between the two accesses on either side at least one of them
/// sees the other. For the last task both go through the contest.
/// </para>
/// <para>
/// Example: after push(1), push(2), push(3) a thief steals 1, the owner takes 3, and for 2 they contest.
/// </para>
/// <para>
/// Sources: D. Chase and Y. Lev, "Dynamic circular work-stealing deque", SPAA 2005 (the algorithm); N. M. Lê, A. Pop,
/// A. Cohen and F. Zappa Nardelli, "Correct and efficient work-stealing for weak memory models", PPoPP 2013 (which
/// orders are needed). Moving the fence out of the owner's way: a barrier on all processors that the thief asks for
/// (M. Desnoyers and others, sys_membarrier; FlushProcessWriteBuffers on Windows), common practice.
/// </para>
/// <para>
/// The counters are 64 bits, signed, and start at 0. They cannot overflow: at 10^9 pushes a second 2^63 take 292 years.
/// So the arithmetic is unchecked. <c>bottom</c> may be <c>top - 1</c> for a moment, while an owner takes from an empty
/// deque, hence signed.
/// </para>
/// <para>
/// Cost (bench/): a push about 1 ns; a take 1 ns, or 6 ns with the fence in it; nothing is allocated but by growing,
/// which
/// doubles the array. An old array is left to the collector: a thief may still read from it.
/// </para>
/// </remarks>
/// <typeparam name="TSteps">Told of each step: <see cref="NoSteps"/>, except in tests.</typeparam>
internal sealed class LockFreeDeque<TSteps> : WorkQueue
    where TSteps : struct, IDequeSteps
{
    private const int NothingLeft = -1;
    private const int ThiefWasFirst = -2;

    private readonly bool _isFenceInTake;
    private DequeFields _shared;

    /// <summary>Makes an empty deque.</summary>
    /// <param name="fence">Who pays for the fence.</param>
    /// <param name="capacity">Slots to begin with, a power of two.</param>
    public LockFreeDeque(FencePlacement fence, int capacity = 256)
    {
        _isFenceInTake = fence == FencePlacement.Owner;
        _shared.Items = new int[capacity];
    }

    /// <inheritdoc/>
    public override int Count
    {
        get
        {
            // order: acquire on both, so that the counters are read in this order: top first can only make the deque
            // look
            // larger, never emptier, than it was. pairs with: nothing; the number is a hint. else: the same, more
            // often.
            long top = Volatile.Read(ref _shared.Top);
            long bottom = Volatile.Read(ref _shared.Bottom);
            return (int)Math.Max(0, unchecked(bottom - top));
        }
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public override void Push(int task)
    {
        unchecked
        {
            // order: none; only this thread writes bottom.
            TSteps.At(DequeStep.PushReadBottom);
            long bottom = _shared.Bottom;

            // A1. order: acquire; the store into the slot may not move above. pairs with: the contest in TrySteal,
            // whose
            // winner has read its slot before. else: a slot that a slow thief still reads is written over.
            TSteps.At(DequeStep.PushReadTop);
            long top = Volatile.Read(ref _shared.Top);
            int[] items = _shared.Items;
            if (bottom - top >= items.Length)
                PutAfterGrowing(top, bottom, task);
            else
                Put(items, bottom, task);
        }
    }

    /// <inheritdoc/>
    public override StealOutcome TryTake(out int task)
    {
        task = TakeNewest();
        if (task >= 0)
            return StealOutcome.Taken;
        if (task == NothingLeft)
        {
            task = -1;
            return StealOutcome.Empty;
        }

        // order: none; the owner wrote this slot, and nothing has been pushed since.
        task = Slot(_shared.Items, unchecked(_shared.Bottom - 1));
        return StealOutcome.LostRace;
    }

    /// <summary>Takes the newest task.</summary>
    /// <returns>The task; below 0 when there is none or a thief was quicker. One number, so that it stays in a
    /// register.</returns>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public int TakeNewest()
    {
        unchecked
        {
            // order: none; only this thread writes bottom.
            TSteps.At(DequeStep.TakeReadBottom);
            long bottom = _shared.Bottom - 1;

            // order: none by itself; F2 below keeps it above the load of top. A volatile store, so that it stays where
            // it is in the machine code also where F2 is the thief's.
            TSteps.At(DequeStep.TakeWriteBottom);
            Volatile.Write(ref _shared.Bottom, bottom);

            // F2. order: full; the store of bottom may not move below the load of top (store-load: the one order that
            // x86 does not keep by itself). pairs with: F3 in TrySteal. else: owner and thief both believe that the
            // other is not there, and take the same task. An interlocked operation is a full fence wherever it works.
            // On a word of its own it takes 1 to 2 ns less here than MemoryBarrier, which on x86 locks the top of the
            // stack, where stores are still under way; an exchange of bottom, store and fence in one, takes longer
            // than both (bench/).
            // With FencePlacement.Thief the owner has no fence: each thief has the kernel run a full fence on every
            // processor of the process before it reads bottom, which is as good at every moment at which a thief looks.
            // What is left for us is the order of the two instructions themselves; a volatile store and a volatile load
            // stay in program order in the compiler's machine code (docs/pool.md says how we know).
            TSteps.At(DequeStep.TakeFence);
            if (_isFenceInTake)
                _ = Interlocked.Or(ref _shared.FenceWord, 0);

            // order: none needed beyond F2. Volatile keeps the compiler from moving it up.
            TSteps.At(DequeStep.TakeReadTop);
            long top = Volatile.Read(ref _shared.Top);
            if (top < bottom)
            {
                // Two or more: no thief can have come as far as this slot.
                // order: none; the owner wrote it.
                TSteps.At(DequeStep.TakeReadItem);
                return Slot(_shared.Items, bottom);
            }

            return TakeLast(top, bottom);
        }
    }

    /// <inheritdoc/>
    public override StealOutcome TrySteal(out int task)
    {
        unchecked
        {
            // A2. order: acquire; nothing below may move above: bottom is read after top. pairs with: the contest of
            // another
            // thief. else: an old bottom with a new top, and an empty deque that looks full.
            TSteps.At(DequeStep.StealReadTop);
            long top = Volatile.Read(ref _shared.Top);

            // A cheap look first, since the barrier is dear: when nothing is there, none is needed. No part of the
            // algorithm: an answer "empty" that is a moment old is as good as one now, and a worker that is about to
            // sleep
            // has a barrier of its own before its last look.
            if (top >= Volatile.Read(ref _shared.Bottom))
            {
                task = -1;
                return StealOutcome.Empty;
            }

            // F3. order: full; top is read before bottom, in the one order that all fences agree on. pairs with: F2.
            // else: see
            // F2. Process-wide: every running thread of this process has had a full fence when the call returns, the
            // owner
            // among them, wherever it was.
            TSteps.At(DequeStep.StealFence);
            if (_isFenceInTake)
                Interlocked.MemoryBarrier();
            else
                Interlocked.MemoryBarrierProcessWide();

            // A3. order: acquire; the slot is read after bottom. pairs with: F1. else: an empty slot.
            TSteps.At(DequeStep.StealReadBottom);
            long bottom = Volatile.Read(ref _shared.Bottom);
            if (top >= bottom)
            {
                task = -1;
                return StealOutcome.Empty;
            }

            // A4. order: acquire; the slot is read from an array whose slots are there. pairs with: the store of the
            // array in
            // Grow. else: slots of a new array before they are copied. An old array is fine: it still holds this slot.
            TSteps.At(DequeStep.StealReadArray);
            int[] items = Volatile.Read(ref _shared.Items);

            // order: none by itself; read before the contest, since the winner's slot may be used again at once.
            TSteps.At(DequeStep.StealReadItem);
            task = Volatile.Read(ref Slot(items, top));

            // order: full; whoever moves top from t to t + 1 has task t, and nobody else. pairs with: itself in
            // TryTakeLast and
            // other thieves. else: a task taken twice.
            TSteps.At(DequeStep.StealContest);
            return Interlocked.CompareExchange(ref _shared.Top, top + 1, top) == top
                ? StealOutcome.Taken
                : StealOutcome.LostRace;
        }
    }

    /// <summary>The last task is contested; with none left bottom goes back to where it was.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    private int TakeLast(long top, long bottom)
    {
        unchecked
        {
            int task = NothingLeft;
            if (top == bottom)
            {
                TSteps.At(DequeStep.TakeReadItem);
                task = Slot(_shared.Items, bottom);

                // order: full; pairs with: the contest in TrySteal. else: the last task taken twice.
                TSteps.At(DequeStep.TakeContest);
                if (Interlocked.CompareExchange(ref _shared.Top, top + 1, top) != top)
                    task = ThiefWasFirst;
            }

            // order: none needed, as in the paper; Volatile costs nothing here and keeps the accesses in order for
            // readers of
            // the machine code. Why no fence: a thief that still sees the smaller value finds nothing, which is true.
            TSteps.At(DequeStep.TakeRestoreBottom);
            Volatile.Write(ref _shared.Bottom, bottom + 1);
            return task;
        }
    }

    /// <summary>The rest of a push, once there is room.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void Put(int[] items, long bottom, int task)
    {
        unchecked
        {
            // order: none by itself; F1 keeps it above the store of bottom. Why no bounds check: the index is taken
            // modulo the length, a power of two.
            TSteps.At(DequeStep.PushWriteItem);
            Slot(items, bottom) = task;

            // F1. order: release; nothing above (the slot, the task's own fields) may move below the store of bottom.
            // pairs with: A3 in TrySteal. else: a thief reads an empty slot, or a task whose fields are not there yet.
            // Volatile.Write is that fence and the relaxed store in one.
            TSteps.At(DequeStep.PushFence);
            TSteps.At(DequeStep.PushWriteBottom);
            Volatile.Write(ref _shared.Bottom, bottom + 1);
        }
    }

    // Does the rest of the push too, so that the usual push has nothing to keep over a call: four moves less (bench/).
    [MethodImpl(MethodImplOptions.NoInlining)]
    private void PutAfterGrowing(long top, long bottom, int task) => Put(Grow(top, bottom), bottom, task);

    private int[] Grow(long top, long bottom)
    {
        unchecked
        {
            int[] old = _shared.Items;
            var items = new int[checked(old.Length * 2)];
            for (long i = top; i < bottom; i++)
                Slot(items, i) = Slot(old, i);

            // order: release; the copies may not move below. pairs with: A4. else: a thief reads a slot that is not
            // copied yet.
            Volatile.Write(ref _shared.Items, items);
            return items;
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static ref int Slot(int[] items, long index)
    {
        unchecked
        {
            return ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(items), (nuint)(uint)(items.Length - 1) & (
                nuint)index);
        }
    }
}
