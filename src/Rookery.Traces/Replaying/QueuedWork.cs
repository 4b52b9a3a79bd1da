namespace Rookery.Traces.Replaying;

/// <summary>
/// The work that each queued task still contained when it was queued, and each stolen one when it was stolen.
/// </summary>
/// <remarks>
/// What a task still contains is its own work not yet done, and all of the children that it has not made yet. Under
/// <c>fork-runs</c> = <c>child</c> what is queued is the rest of the parent; a called task's rest goes with that of
/// its callers. Made in one pass over the events. Mutable while it is made, for one thread.
/// </remarks>
public sealed class QueuedWork
{
    private readonly TaskTable _tasks;
    private readonly long[] _left;
    private readonly (long Since, int Task)[] _working;
    private readonly bool _queuesParent;
    private readonly List<long> _queued = [];
    private readonly List<long> _stolen = [];

    internal QueuedWork(Trace trace, TaskTable tasks)
    {
        _tasks = tasks;
        _queuesParent = trace.Inputs.Option("fork-runs", "parent") == "child";
        _left = new long[tasks.Count];
        for (int task = 0; task < _left.Length; task++)
            _left[task] = tasks[task].TotalWork;
        _working = new (long, int)[tasks.WorkerCount];
        Array.Fill(_working, (0, -1));
    }

    /// <summary>In order of queueing, in the trace's unit of time.</summary>
    public IReadOnlyList<long> Queued => _queued;

    /// <summary>In order of stealing; each task of a steal of several counts.</summary>
    public IReadOnlyList<long> Stolen => _stolen;

    /// <summary>That of a run.</summary>
    /// <param name="trace">The run.</param>
    /// <param name="tasks">Its tasks, from <c>TaskTable.From(trace)</c>.</param>
    public static QueuedWork Of(Trace trace, TaskTable tasks)
    {
        var work = new QueuedWork(trace, tasks);
        for (int chunk = 0; chunk < trace.ChunkCount; chunk++)
        {
            foreach (ref readonly TraceEvent item in trace.Chunk(chunk))
            {
                long amount = work.After(in item);
                if (amount >= 0)
                    (item.Kind == EventKind.Fork ? work._queued : work._stolen).Add(amount);
            }
        }

        return work;
    }

    /// <summary>
    /// Takes the next event; gives the work in what a fork queued or a steal moved, -1 for anything else.
    /// </summary>
    internal long After(in TraceEvent item)
    {
        if (item.Worker >= _working.Length)
            return -1;
        ref (long Since, int Task) working = ref _working[item.Worker];
        if (IsTask(working.Task))
            _left[working.Task] = unchecked(_left[working.Task] - Durations.Between(working.Since, item.Time));
        working = (item.Time, item.Kind == EventKind.Work ? item.Task : -1);
        if (item.Kind is EventKind.Fork or EventKind.Call && IsTask(item.Task) && IsTask(item.Other))
            _left[item.Task] = unchecked(_left[item.Task] - _tasks[item.Other].TotalWork);
        return item.Kind switch
        {
            EventKind.Fork => LeftIn(_queuesParent ? item.Task : item.Other),
            EventKind.Steal => LeftIn(item.Task),
            _ => -1,
        };
    }

    private long LeftIn(int task)
    {
        if (!IsTask(task))
            return -1;
        long sum = Math.Max(0, _left[task]);
        int bound = _tasks.Count;

        // The bound ends the walk in a trace whose callers make a ring.
        while (_queuesParent && _tasks[task].IsCalled && IsTask(_tasks[task].Parent) && bound-- > 0)
        {
            task = _tasks[task].Parent;
            sum = Durations.Sum(sum, Math.Max(0, _left[task]));
        }

        return sum;
    }

    private bool IsTask(int task) => task >= 0 && task < _left.Length;
}
