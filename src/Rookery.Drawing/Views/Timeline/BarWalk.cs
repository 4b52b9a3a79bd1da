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
    private int _step;
    private bool _isOver;

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
    /// Goes on for so many events; reports each bar to <paramref name="bar"/>, and each steal (time, thief, victim,
    /// step) to the other.
    /// </summary>
    /// <returns>Whether the walk is over.</returns>
    public bool Advance(int events, Action<Bar> bar, Action<long, int, int, int> steal)
    {
        if (_isOver)
            return true;
        int until = (int)Math.Min(_trace.Count, (long)_step + events);
        for (; _step < until; _step++)
        {
            ref readonly var item = ref _trace[_step];
            if (item.Worker >= _workers.Length)
                continue;
            if (_byOrigin)
                Follow(item);
            Advance(item, _step, bar);
            if (_steals.IsNewSteal(item))
                steal(item.Time, item.Worker, item.Other, _step);
        }

        if (_step < _trace.Count)
            return false;
        for (var worker = 0; worker < _workers.Length; worker++)
            Report(worker, bar);
        _isOver = true;
        return true;
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
