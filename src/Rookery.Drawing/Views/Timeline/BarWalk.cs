using Rookery.Traces;

namespace Rookery.Drawing;

/// <summary>
/// Walks through a trace once and reports what each worker did as bars: those of length 0 are dropped, neighbours that
/// do the same are one. Also reports the steals. Mutable; one walk.
/// </summary>
/// <remarks>Constant cost for an event; 4 bytes a task and 40 a worker.</remarks>
internal sealed class BarWalk
{
    private readonly Trace _trace;
    private readonly int[] _origins;
    private readonly Pending[] _workers;
    private readonly bool _byOrigin;
    private readonly bool _isShared;
    private readonly StealFilter _steals;

    public BarWalk(Trace trace, int workers, bool byOrigin)
    {
        _trace = trace;
        _byOrigin = byOrigin;
        _isShared = trace.Inputs.Option("queues", "per-worker") == "shared";
        _origins = byOrigin ? new int[trace.TaskCount] : [];
        _steals = new StealFilter(workers);
        _workers = new Pending[workers];
        Array.Fill(_workers, new Pending(Lane.Off, 0, 0, Lane.Off, 0, 0));
    }

    /// <summary>
    /// Reports each bar to <paramref name="bar"/>, and each steal (time, thief, victim, step) to
    /// the other.
    /// </summary>
    public void Run(Action<Bar> bar, Action<long, int, int, int> steal)
    {
        var step = -1;
        for (var chunk = 0; chunk < _trace.ChunkCount; chunk++)
        {
            foreach (ref readonly var item in _trace.Chunk(chunk))
            {
                step++;
                if (item.Worker >= _workers.Length)
                    continue;
                if (_byOrigin)
                    Follow(item);
                Advance(item, step, bar);
                if (_steals.IsNewSteal(item))
                    steal(item.Time, item.Worker, item.Other, step);
            }
        }

        for (var worker = 0; worker < _workers.Length; worker++)
            Report(worker, bar);
    }

    private void Advance(in TraceEvent item, int step, Action<Bar> bar)
    {
        ref var pending = ref _workers[item.Worker];
        var lane = Lane.After(item.Kind, OriginOf(item.Task));
        if (item.Time > pending.To && pending.Next != pending.Lane)
        {
            Report(item.Worker, bar);
            pending = new(pending.Next, pending.To, item.Time, lane, pending.NextStep, step);
        }
        else
        {
            pending = pending with { To = Math.Max(pending.To, item.Time), Next = lane, NextStep = step };
        }
    }

    private void Report(int worker, Action<Bar> bar)
    {
        var (lane, from, to, _, step, _) = _workers[worker];
        if (lane != Lane.Off && to > from)
            bar(new(worker, lane, from, to, step));
    }

    private void Follow(in TraceEvent item)
    {
        if (item.Kind == EventKind.Begin && item.Other < 0)
            SetOrigin(item.Task, item.Worker);
        else if (item.Kind is EventKind.Fork or EventKind.Call)
            SetOrigin(item.Other, _isShared && item.Kind == EventKind.Fork ? item.Worker : OriginOf(item.Task));
        else if (item.Kind == EventKind.Steal)
            SetOrigin(item.Task, item.Other);
    }

    private int OriginOf(int task) => task >= 0 && task < _origins.Length ? _origins[task] : 0;

    private void SetOrigin(int task, int worker)
    {
        if (task >= 0 && task < _origins.Length && worker >= 0)
            _origins[task] = worker;
    }

    // The bar from From to To is finished but may still grow; Next has begun at To.
    private record struct Pending(int Lane, long From, long To, int Next, int Step, int NextStep);
}
