namespace Rookery.Traces.Replaying;

/// <summary>All tasks of a run with what the trace tells of each, and the tree that forks and calls make of
/// them.</summary>
/// <remarks>
/// <para>
/// Made in one pass over the events. About 80 bytes a task, and no more than two tasks an event are kept: in a lawful
/// trace task numbers are dense, so nothing is lost, and a stray number in an odd one cannot ask for memory.
/// </para>
/// <para>
/// Never throws on an odd trace, since the audit is the judge. A task that never begins has -1 for its beginning; a
/// second beginning or end is passed over; an edge that would close a circle is passed over. Immutable; safe to read
/// from several threads.
/// </para>
/// </remarks>
public sealed class TaskTable
{
    private readonly TaskRecord[] _records;
    private readonly TaskForest _forest;

    internal TaskTable(TaskRecord[] records, TaskForest forest, int workerCount, long work)
    {
        _records = records;
        _forest = forest;
        WorkerCount = workerCount;
        Work = work;
    }

    /// <summary>Number of tasks: they are numbered from 0 up to, not including, this.</summary>
    public int Count => _records.Length;

    /// <summary>Workers of the run: those asked for, or more when more appear; at most
    /// <see cref="Replay.WorkersMax"/>.</summary>
    public int WorkerCount { get; }

    /// <summary>The work of all tasks together, in units of time.</summary>
    public long Work { get; }

    /// <summary>What is known of a task.</summary>
    /// <exception cref="IndexOutOfRangeException">There is no such task; see <see cref="Knows"/>.</exception>
    public ref readonly TaskRecord this[int task] => ref _records[task];

    /// <summary>Whether the table has a task of that number.</summary>
    public bool Knows(int task) => task >= 0 && task < _records.Length;

    /// <summary>The tasks that a task forked or called, in order of creation.</summary>
    public ReadOnlySpan<int> ChildrenOf(int task) => _forest.ChildrenOf(task);

    /// <summary>Those of its children that have ended by the end of the trace, in order of their ends.</summary>
    public ReadOnlySpan<int> EndedChildrenOf(int task) => _forest.EndedChildrenOf(task);

    /// <summary>Tasks from the outermost caller that waits for <paramref name="task"/> to return, down to the task
    /// itself.</summary>
    /// <remarks>A forked task is alone; callers move with their callee from worker to worker.</remarks>
    public IEnumerable<int> CallChainOf(int task)
    {
        var chain = new Stack<int>();
        for (int t = task; ; t = _records[t].Parent)
        {
            chain.Push(t);
            if (!_records[t].IsCalled)
                return chain;
        }
    }

    /// <summary>How many of a task's children exist at a step and have not ended.</summary>
    /// <param name="task">A task of the table.</param>
    /// <param name="step">Number of events that have happened.</param>
    public int UnfinishedChildren(int task, int step) =>
        Math.Max(0, CreatedChildren(task, step) - EndedChildren(task, step));

    /// <summary>How many of a task's children have ended within the first <paramref name="step"/> events.</summary>
    public int EndedChildren(int task, int step) => CountBefore(EndedChildrenOf(task), step, isEnd: true);

    /// <summary>How many children a task has forked or called within the first <paramref name="step"/>
    /// events.</summary>
    public int CreatedChildren(int task, int step) => CountBefore(ChildrenOf(task), step, isEnd: false);

    /// <summary>The table of a trace.</summary>
    public static TaskTable From(Trace trace)
    {
        var builder = new TaskTableBuilder(trace);
        foreach (int _ in builder.Parts())
        {
        }

        return builder.Build();
    }

    /// <summary>Position of a task when every task is followed by all its descendants, in order of creation.</summary>
    internal int PlaceOf(int task) => _forest.Place[task];

    /// <summary>Number of places that a task and its descendants fill.</summary>
    internal int PlacesOf(int task) => _forest.Size[task];

    // Both lists are sorted by that step: the first by creation, the second by end.
    private int CountBefore(ReadOnlySpan<int> tasks, int step, bool isEnd)
    {
        int low = 0;
        int high = tasks.Length;
        while (low < high)
        {
            int middle = (low + high) >>> 1;
            ref readonly TaskRecord record = ref _records[tasks[middle]];
            if ((isEnd ? record.EndStep : record.OriginStep) < step)
                low = middle + 1;
            else
                high = middle;
        }

        return low;
    }
}
