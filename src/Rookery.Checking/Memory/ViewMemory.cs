using System.Collections.Immutable;
using Rookery.Checking.Compiling;
using Rookery.Checking.Naming;
using Rookery.Checking.States;
using Rookery.Checking.Syntax;

namespace Rookery.Checking.Memory;

/// <summary>Release and acquire by views: C11 atomics without reading from the future.</summary>
/// <remarks>
/// The machine of Kang, Hur, Lahav, Vafeiadis and Dreyer (POPL 2017) without promises. Each place has a list of writes;
/// a view says for each place how far along its list somebody is. A read takes any write from the reader's view on; a
/// write goes anywhere behind it; an update takes the spot directly behind the write that it reads, and nothing comes
/// between the two later. A write carries a view: the writer's own when it releases, that of the writer's last
/// release fence otherwise; an update adds the view of what it read. Who reads with acquire takes the view over, who
/// reads relaxed does so at the next acquire fence. A full fence exchanges views with one view that all full fences
/// share. A lock is taken with acquire, given back with release, and only its last write counts.
/// <para>
/// Left out: load buffering (a read that takes a write which depends on it or comes later in program order), release
/// sequences of plain writes of the same thread (C++20 has dropped them), sequentially consistent accesses other than
/// fences, consume. Writes that no thread can read any more are forgotten.
/// </para>
/// </remarks>
internal sealed class ViewMemory(ScenarioCode code, StateShape shape, Capacities capacities) : MemoryMachine
{
    private readonly ViewSlots _slots = new(code, shape, capacities);

    /// <inheritdoc/>
    public override int Ways(ReadOnlySpan<ulong> state, int thread, in Request request)
    {
        if (request.Access.Kind is AccessKind.Fence or AccessKind.Unlock)
            return 1;
        int place = request.Place;
        if (request.Access.Kind == AccessKind.Lock)
            return Get(state, _slots.Value[place][0]) == 0 ? 1 : 0;
        int count = CountOf(state, place), from = (int)Get(state, _slots.Current[thread][place]);
        if (request.Access.Kind == AccessKind.Load)
            return count - from;
        int ways = 0;
        for (int at = from; at < count; at++)
            ways += IsWay(state, request, at, count) ? 1 : 0;
        return ways;
    }

    /// <inheritdoc/>
    public override long Perform(Span<ulong> state, int thread, in Request request, int way)
    {
        int place = request.Place;
        switch (request.Access.Kind)
        {
            case AccessKind.Fence:
                Fence(state, thread, request.Access.Order);
                return 0;
            case AccessKind.Lock:
                Set(state, _slots.Value[place][0], 1);
                TakeOver(state, thread, _slots.View[place][0], true);
                return 0;
            case AccessKind.Unlock:
                Set(state, _slots.Value[place][0], 0);
                for (int about = 0; about < _slots.Places; about++)
                    Raise(state, _slots.View[place][0][about], Get(state, _slots.Current[thread][about]));
                return 0;
        }

        int at = (int)Get(state, _slots.Current[thread][place]);
        int count = CountOf(state, place);
        if (request.Access.Kind == AccessKind.Load)
            return Read(state, thread, request, at + way);
        while (!IsWay(state, request, at, count) || way-- > 0)
            at++;
        if (request.Access.Kind == AccessKind.Store)
        {
            Write(state, thread, request, at + 1, request.First, -1);
            return 0;
        }

        long old = Read(state, thread, request, at);
        bool isWritten = request.TryUpdate(old, out long written);
        if (isWritten)
            Write(state, thread, request, at + 1, written, at);
        return request.Answer(old, isWritten);
    }

    /// <inheritdoc/>
    public override long Final(ReadOnlySpan<ulong> state, int place) =>
        Get(state, _slots.Value[place][CountOf(state, place) - 1]);

    /// <inheritdoc/>
    public override ImmutableArray<long> Writes(ReadOnlySpan<ulong> state, int place)
    {
        var writes = new long[CountOf(state, place)];
        for (int at = 0; at < writes.Length; at++)
            writes[at] = Get(state, _slots.Value[place][at]);
        return [.. writes];
    }

    /// <inheritdoc/>
    public override ImmutableArray<int> Seen(ReadOnlySpan<ulong> state, int thread)
    {
        int[] seen = new int[_slots.Places];
        for (int place = 0; place < seen.Length; place++)
            seen[place] = (int)Get(state, _slots.Current[thread][place]);
        return [.. seen];
    }

    /// <inheritdoc/>
    public override void Settle(Span<ulong> state, uint ended)
    {
        for (int thread = 0; thread < _slots.Threads; thread++)
        {
            if ((ended & (1u << thread)) != 0)
                Forget(state, thread);
        }

        for (int place = 0; place < _slots.Places; place++)
        {
            int count = CountOf(state, place);
            if (count < 2)
                continue;
            long unread = count - 1;
            for (int thread = 0; thread < _slots.Threads; thread++)
            {
                if ((ended & (1u << thread)) == 0)
                    unread = Math.Min(unread, Get(state, _slots.Current[thread][place]));
            }

            if (unread > 0)
                DropFirst(state, place, count, (int)unread);
        }
    }

    /// <summary>Whether an update can read the write at this spot, or a store can go directly behind it.</summary>
    private bool IsWay(ReadOnlySpan<ulong> state, in Request request, int at, int count)
    {
        bool isFree = at + 1 == count || Get(state, _slots.Joined[request.Place][at + 1]) == 0;
        if (isFree || request.Access.Kind == AccessKind.Store)
            return isFree;
        return !request.TryUpdate(Get(state, _slots.Value[request.Place][at]), out _);
    }

    private long Read(Span<ulong> state, int thread, in Request request, int at)
    {
        int place = request.Place;
        Raise(state, _slots.Current[thread][place], at);
        Raise(state, _slots.Acquire[thread][place], at);
        TakeOver(state, thread, _slots.View[place][at], request.Access.Acquires);
        return Get(state, _slots.Value[place][at]);
    }

    /// <summary>Takes over a view: at once, or for the next acquire fence.</summary>
    private void TakeOver(Span<ulong> state, int thread, int[] view, bool isAtOnce)
    {
        for (int about = 0; about < _slots.Places; about++)
        {
            if (view[about] < 0)
                continue;
            long seen = Get(state, view[about]);
            if (isAtOnce)
                Raise(state, _slots.Current[thread][about], seen);
            Raise(state, _slots.Acquire[thread][about], seen);
        }
    }

    /// <summary>Puts a write at a spot of its place's list.</summary>
    /// <param name="state">The state.</param>
    /// <param name="thread">Who writes.</param>
    /// <param name="request">The access.</param>
    /// <param name="spot">Where it goes; those from there on move up.</param>
    /// <param name="value">What it writes.</param>
    /// <param name="read">The write that an update has read, directly before; -1 for a store.</param>
    private void Write(Span<ulong> state, int thread, in Request request, int spot, long value, int read)
    {
        int place = request.Place;
        int count = CountOf(state, place);
        if (count == _slots.Lengths[place])
            CapacityOverflowException.Throw(place);
        if (spot < count)
            MakeRoom(state, place, spot, count);
        Set(state, _slots.Count[place], count + 1);
        Set(state, _slots.Value[place][spot], value);
        Set(state, _slots.Joined[place][spot], read >= 0 ? 1 : 0);
        Raise(state, _slots.Current[thread][place], spot);
        Raise(state, _slots.Acquire[thread][place], spot);
        int[][] source = request.Access.Releases ? _slots.Current : _slots.Release;
        for (int about = 0; about < _slots.Places; about++)
        {
            int slot = _slots.View[place][spot][about];
            if (slot < 0)
                continue;
            long carried = Get(state, source[thread][about]);
            if (read >= 0)
                carried = Math.Max(carried, Get(state, _slots.View[place][read][about]));
            Set(state, slot, carried);
        }
    }

    private void MakeRoom(Span<ulong> state, int place, int spot, int count)
    {
        for (int at = count; at > spot; at--)
            Move(state, place, at - 1, at);
        foreach (int slot in _slots.ViewsOf[place])
        {
            if (slot >= 0 && Get(state, slot) is var seen && seen >= spot)
                Set(state, slot, seen + 1);
        }
    }

    private void DropFirst(Span<ulong> state, int place, int count, int dropped)
    {
        for (int at = dropped; at < count; at++)
            Move(state, place, at, at - dropped);
        for (int at = count - dropped; at < count; at++)
        {
            Set(state, _slots.Value[place][at], 0);
            Set(state, _slots.Joined[place][at], 0);
            foreach (int slot in _slots.View[place][at])
                Set(state, slot, 0);
        }

        Set(state, _slots.Count[place], count - dropped);
        foreach (int slot in _slots.ViewsOf[place])
            Set(state, slot, Math.Max(0, Get(state, slot) - dropped));
    }

    private void Move(Span<ulong> state, int place, int from, int to)
    {
        Set(state, _slots.Value[place][to], Get(state, _slots.Value[place][from]));
        Set(state, _slots.Joined[place][to], Get(state, _slots.Joined[place][from]));
        for (int about = 0; about < _slots.Places; about++)
            Set(state, _slots.View[place][to][about], Get(state, _slots.View[place][from][about]));
    }

    private void Fence(Span<ulong> state, int thread, AccessOrder order)
    {
        for (int place = 0; place < _slots.Places; place++)
        {
            int current = _slots.Current[thread][place];
            if (current < 0)
                continue;
            long seen = Get(state, current);
            if (order is AccessOrder.Acquire or AccessOrder.Full)
                seen = Math.Max(seen, Get(state, _slots.Acquire[thread][place]));
            if (order == AccessOrder.Full)
            {
                seen = Math.Max(seen, Get(state, _slots.Fence[place]));
                Set(state, _slots.Fence[place], seen);
                Raise(state, _slots.Acquire[thread][place], seen);
            }

            Set(state, current, seen);
            if (order is AccessOrder.Release or AccessOrder.Full)
                Set(state, _slots.Release[thread][place], seen);
        }
    }

    /// <summary>A thread that has ended reads nothing more.</summary>
    private void Forget(Span<ulong> state, int thread)
    {
        for (int place = 0; place < _slots.Places; place++)
        {
            Set(state, _slots.Current[thread][place], 0);
            Set(state, _slots.Acquire[thread][place], 0);
            Set(state, _slots.Release[thread][place], 0);
        }
    }

    private int CountOf(ReadOnlySpan<ulong> state, int place) =>
        _slots.Count[place] < 0 ? 1 : (int)Slots[_slots.Count[place]].Get(state);

    private long Get(ReadOnlySpan<ulong> state, int slot) => slot < 0 ? 0 : Slots[slot].Get(state);

    private void Set(Span<ulong> state, int slot, long value)
    {
        if (slot >= 0)
            Slots[slot].Set(state, value);
    }

    private void Raise(Span<ulong> state, int slot, long value)
    {
        if (slot >= 0 && Slots[slot].Get(state) < value)
            Slots[slot].Set(state, value);
    }
}
