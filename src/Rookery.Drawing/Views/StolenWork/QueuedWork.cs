using Rookery.Traces;
using Rookery.Traces.Replaying;

namespace Rookery.Drawing;

/// <summary>
/// The work that each queued task still contained when it was queued, and each stolen one when it was stolen.
/// </summary>
/// <remarks>
/// What a task still contains is its own work not yet done, and all of the children that it has not made yet. Under
/// <c>fork-runs</c> = <c>child</c> what is queued is the rest of the parent; a called task's rest goes with that of
/// its callers.
/// </remarks>
internal sealed class QueuedWork
{
    private readonly TaskTable _tasks;
    private readonly long[] _left;
    private readonly (long Since, int Task)[] _working;
    private readonly bool _queuesParent;

    private QueuedWork(Trace trace, TaskTable tasks)
    {
        _tasks = tasks;
        _queuesParent = trace.Inputs.Option("fork-runs", "parent") == "child";
        _left = new long[tasks.Count];
        for (var task = 0; task < _left.Length; task++)
            _left[task] = tasks[task].TotalWork;
        _working = new (long, int)[TraceSize.WorkersOf(trace)];
        Array.Fill(_working, (0, -1));
    }

    /// <summary>In order of queueing.</summary>
    public List<long> Queued { get; } = [];

    /// <summary>In order of stealing; each task of a steal of several counts.</summary>
    public List<long> Stolen { get; } = [];

    public static QueuedWork Of(Trace trace, TaskTable tasks)
    {
        var work = new QueuedWork(trace, tasks);
        for (var chunk = 0; chunk < trace.ChunkCount; chunk++)
        {
            foreach (ref readonly var item in trace.Chunk(chunk))
                work.Follow(item);
        }

        return work;
    }

    private void Follow(in TraceEvent item)
    {
        if (item.Worker >= _working.Length)
            return;
        ref var working = ref _working[item.Worker];
        if (IsTask(working.Task))
            _left[working.Task] -= item.Time - working.Since;
        working = (item.Time, item.Kind == EventKind.Work ? item.Task : -1);
        if (item.Kind is EventKind.Fork or EventKind.Call && IsTask(item.Task) && IsTask(item.Other))
            _left[item.Task] -= _tasks[item.Other].TotalWork;
        if (item.Kind == EventKind.Fork)
            Keep(_queuesParent ? item.Task : item.Other, Queued);
        if (item.Kind == EventKind.Steal)
            Keep(item.Task, Stolen);
    }

    private void Keep(int task, List<long> list)
    {
        if (!IsTask(task))
            return;
        var sum = Math.Max(0, _left[task]);
        var bound = _tasks.Count;
        // The bound ends the walk in a trace whose callers make a ring.
        while (_queuesParent && _tasks[task].IsCalled && IsTask(_tasks[task].Parent) && bound-- > 0)
        {
            task = _tasks[task].Parent;
            sum += Math.Max(0, _left[task]);
        }

        list.Add(sum);
    }

    private bool IsTask(int task) => task >= 0 && task < _left.Length;
}
