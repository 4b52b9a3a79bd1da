using Rookery.Checking.Compiling;
using Rookery.Checking.Memory;
using Rookery.Checking.States;

namespace Rookery.Checking.Exploring;

/// <summary>A scenario with the shape of its states: which slot is what, and where it lies.</summary>
/// <remarks>Immutable once made, so that several steppers can share it.</remarks>
internal sealed class ScenarioMachine
{
    public ScenarioMachine(ScenarioCode code, Capacities capacities, CheckOptions options, StateShape? seen)
    {
        Code = code;
        if (code.Model is MemoryModel.Tso or MemoryModel.Pso)
            capacities.Level(code.Twins);
        Shape = new(code.Twins);
        (ForgetsNames, IsSymmetric) = (options.Has(Reductions.Names), options.Has(Reductions.Symmetry));
        Points = [.. code.Threads.Select((thread, at) => Shape.Add(new(SlotKind.Point, at), 0, thread.End))];
        Begun = [.. code.Threads.Select((thread, at) => NeedsBegun(thread)
            ? Shape.Add(new(SlotKind.Begun, at), 0, 1) : -1)];
        Locals = [.. code.Threads.Select((thread, at) => Enumerable.Range(0, thread.LocalCount)
            .Select(local => Shape.Add(new(SlotKind.Local, at, local), 0)).ToArray())];
        Results = [.. code.Invocations.Select(one => Enumerable.Range(0, one.ResultCount)
            .Select(position => Shape.Add(new(SlotKind.Result, one.Thread, one.Order, position), 0)).ToArray())];
        Clocks = [.. code.Invocations.Select(one => code.Threads
            .Select((other, at) => !code.TracksHistory || at == one.Thread
                ? -1
                : Shape.Add(new(SlotKind.Clock, one.Thread, one.Order, Other: at), 0, other.Invocations.Length))
            .ToArray())];
        Memory = MemoryMachine.Create(code, Shape, capacities, options.BufferMax);
        if (seen is not null)
            Shape.WidenLike(seen);
    }

    public ScenarioCode Code { get; }

    public StateShape Shape { get; }

    public MemoryMachine Memory { get; }

    /// <summary>Whether names that no longer matter are forgotten.</summary>
    public bool ForgetsNames { get; }

    /// <summary>Whether threads that do the same may change places.</summary>
    public bool IsSymmetric { get; }

    public Layout Layout { get; private set; } = null!;

    /// <summary>By thread.</summary>
    public int[] Points { get; }

    /// <summary>By thread; -1 where the point tells.</summary>
    public int[] Begun { get; }

    /// <summary>By thread and register.</summary>
    public int[][] Locals { get; }

    /// <summary>By operation and position.</summary>
    public int[][] Results { get; }

    /// <summary>By operation and thread; -1 where it is not kept.</summary>
    public int[][] Clocks { get; }

    /// <summary>Lays the states out.</summary>
    public void Lay(Layout layout)
    {
        Layout = layout;
        Memory.Slots = layout.Slots;
    }

    public long Get(ReadOnlySpan<ulong> state, int slot) => Layout.Slots[slot].Get(state);

    /// <summary>At which point a thread waits.</summary>
    public int PointOf(ReadOnlySpan<ulong> state, int thread) => (int)Layout.Slots[Points[thread]].Get(state);

    /// <summary>Whether a thread has ended.</summary>
    public bool HasEnded(ReadOnlySpan<ulong> state, int thread) =>
        PointOf(state, thread) == Code.Threads[thread].End;

    /// <summary>How many operations a thread has ended.</summary>
    public int EndedCount(ReadOnlySpan<ulong> state, int thread) =>
        Code.Threads[thread].Points[PointOf(state, thread)].Invocation;

    /// <summary>Whether a thread is inside an operation: it has made a step of it and has not ended it.</summary>
    public bool IsInside(ReadOnlySpan<ulong> state, int thread)
    {
        if (Begun[thread] >= 0)
            return Get(state, Begun[thread]) != 0;
        return !Code.Threads[thread].Points[PointOf(state, thread)].IsFirst;
    }

    private bool NeedsBegun(ThreadCode thread) =>
        Code.TracksHistory && thread.Points.Any(point => point is { IsFirst: true, IsLater: true });
}
