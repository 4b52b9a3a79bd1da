using System.Collections.Immutable;
using Rookery.Checking.Compiling;
using Rookery.Checking.Naming;
using Rookery.Checking.States;
using Rookery.Checking.Syntax;

namespace Rookery.Checking.Memory;

/// <summary>Store buffers: a thread's writes wait in a queue of its own before others see them.</summary>
/// <remarks>
/// Total store order is the x86-TSO machine of Owens, Sarkar and Sewell (TPHOLs 2009): one queue for each thread, first
/// in, first out; a read takes the thread's own newest waiting write of that place, or else memory; a full fence, a
/// read-modify-write, a lock and an unlock wait until the thread's queue is empty. Partial store order (SPARC, 1994)
/// has a queue for each thread and place, so that writes to different places leave in any order, and a release fence
/// keeps those before it in front of those after it.
/// <para>
/// Both are kept as one list for each thread. Under partial store order it is sorted by place between two fences: the
/// order of writes to different places has no meaning there, and so equal states look equal.
/// </para>
/// </remarks>
internal sealed class BufferedMemory : MemoryMachine
{
    private readonly int[] _places;
    private readonly int[] _counts;
    private readonly int[][] _bufferPlaces;
    private readonly int[][] _bufferValues;
    private readonly int _bufferMax;
    private readonly bool _isByPlace;
    private readonly int _barrier;

    public BufferedMemory(ScenarioCode code, StateShape shape, Capacities capacities, int bufferMax, bool isByPlace)
    {
        (_bufferMax, _isByPlace, _barrier) = (bufferMax, isByPlace, code.PlaceCount + 1);
        _places = SequentialMemory.AddPlaces(code, shape);
        int threads = code.Threads.Length;
        _counts = new int[threads];
        (_bufferPlaces, _bufferValues) = (new int[threads][], new int[threads][]);
        for (int thread = 0; thread < threads; thread++)
        {
            int length = capacities[thread];
            _counts[thread] = shape.Add(new(SlotKind.BufferCount, thread), 0);
            _bufferPlaces[thread] = new int[length];
            _bufferValues[thread] = new int[length];
            for (int at = 0; at < length; at++)
            {
                _bufferPlaces[thread][at] = shape.Add(new(SlotKind.BufferPlace, thread, at), 0);
                _bufferValues[thread][at] = shape.Add(new(SlotKind.BufferValue, thread, at), 0);
            }
        }
    }

    /// <inheritdoc/>
    public override int Ways(ReadOnlySpan<ulong> state, int thread, in Request request)
    {
        switch (request.Access.Kind)
        {
            case AccessKind.Load:
                return 1;
            case AccessKind.Store:
                return _bufferMax == 0 || WaitingFor(state, thread, request.Place) < _bufferMax ? 1 : 0;
            case AccessKind.Fence when request.Access.Order != AccessOrder.Full:
                return 1;
            case AccessKind.Lock:
                return Count(state, thread) == 0 && Slots[_places[request.Place]].Get(state) == 0 ? 1 : 0;
            default:
                return Count(state, thread) == 0 ? 1 : 0;
        }
    }

    /// <inheritdoc/>
    public override long Perform(Span<ulong> state, int thread, in Request request, int way)
    {
        switch (request.Access.Kind)
        {
            case AccessKind.Fence:
                if (_isByPlace && request.Access.Order == AccessOrder.Release)
                    AddBarrier(state, thread);
                return 0;
            case AccessKind.Load:
                return Load(state, thread, request.Place);
            case AccessKind.Store:
                Append(state, thread, request.Place + 1, request.First);
                return 0;
            default:
                return SequentialMemory.PerformAt(state, Slots[_places[request.Place]], request);
        }
    }

    /// <inheritdoc/>
    public override int Drifts(ReadOnlySpan<ulong> state, int thread)
    {
        int count = Count(state, thread);
        if (!_isByPlace || count < 2)
            return Math.Min(count, 1);
        int ways = 0;
        long before = 0;
        for (int at = 0; at < count; at++)
        {
            long place = Place(state, thread, at);
            if (place == _barrier)
                break;
            ways += place == before ? 0 : 1;
            before = place;
        }

        return ways;
    }

    /// <inheritdoc/>
    public override int Drift(Span<ulong> state, int thread, int way)
    {
        int at = 0;
        while (way > 0)
        {
            at++;
            way -= Place(state, thread, at) == Place(state, thread, at - 1) ? 0 : 1;
        }

        int place = (int)Place(state, thread, at) - 1;
        Slots[_places[place]].Set(state, Slots[_bufferValues[thread][at]].Get(state));
        Remove(state, thread, at);
        if (_isByPlace && Count(state, thread) > 0 && Place(state, thread, 0) == _barrier)
            Remove(state, thread, 0);
        return place;
    }

    /// <inheritdoc/>
    public override ulong WaitingPlaces(ReadOnlySpan<ulong> state, int thread)
    {
        ulong places = 0;
        for (int at = Count(state, thread) - 1; at >= 0; at--)
        {
            long place = Place(state, thread, at);
            places |= place == _barrier ? 0 : 1ul << (int)(place - 1);
        }

        return places;
    }

    /// <inheritdoc/>
    public override long Final(ReadOnlySpan<ulong> state, int place) => Slots[_places[place]].Get(state);

    /// <inheritdoc/>
    public override ImmutableArray<(int Place, long Value)> Waiting(ReadOnlySpan<ulong> state, int thread)
    {
        var waiting = ImmutableArray.CreateBuilder<(int, long)>();
        for (int at = 0; at < Count(state, thread); at++)
        {
            long place = Place(state, thread, at);
            waiting.Add((place == _barrier ? -1 : (int)place - 1, Slots[_bufferValues[thread][at]].Get(state)));
        }

        return waiting.ToImmutable();
    }

    private int Count(ReadOnlySpan<ulong> state, int thread) => (int)Slots[_counts[thread]].Get(state);

    private long Place(ReadOnlySpan<ulong> state, int thread, int at) =>
        Slots[_bufferPlaces[thread][at]].Get(state);

    private int WaitingFor(ReadOnlySpan<ulong> state, int thread, int place)
    {
        int count = Count(state, thread);
        if (!_isByPlace)
            return count;
        int waiting = 0;
        for (int at = 0; at < count; at++)
            waiting += Place(state, thread, at) == place + 1 ? 1 : 0;
        return waiting;
    }

    private long Load(ReadOnlySpan<ulong> state, int thread, int place)
    {
        for (int at = Count(state, thread) - 1; at >= 0; at--)
        {
            if (Place(state, thread, at) == place + 1)
                return Slots[_bufferValues[thread][at]].Get(state);
        }

        return Slots[_places[place]].Get(state);
    }

    private void AddBarrier(Span<ulong> state, int thread)
    {
        int count = Count(state, thread);
        if (count > 0 && Place(state, thread, count - 1) != _barrier)
            Append(state, thread, _barrier, 0);
    }

    /// <summary>Adds an entry; under partial store order before those of later places since the last barrier.</summary>
    private void Append(Span<ulong> state, int thread, int place, long value)
    {
        int at = Count(state, thread);
        if (at == _bufferPlaces[thread].Length)
            CapacityOverflowException.Throw(thread);
        Slots[_counts[thread]].Set(state, at + 1);
        while (_isByPlace && place != _barrier && at > 0
            && Place(state, thread, at - 1) is var before && before != _barrier && before > place)
        {
            Write(state, thread, at, before, Slots[_bufferValues[thread][at - 1]].Get(state));
            at--;
        }

        Write(state, thread, at, place, value);
    }

    private void Remove(Span<ulong> state, int thread, int at)
    {
        int last = Count(state, thread) - 1;
        for (; at < last; at++)
            Write(state, thread, at, Place(state, thread, at + 1), Slots[_bufferValues[thread][at + 1]].Get(state));
        Write(state, thread, last, 0, 0);
        Slots[_counts[thread]].Set(state, last);
    }

    private void Write(Span<ulong> state, int thread, int at, long place, long value)
    {
        Slots[_bufferPlaces[thread][at]].Set(state, place);
        Slots[_bufferValues[thread][at]].Set(state, value);
    }
}
