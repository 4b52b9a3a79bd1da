namespace Rookery.Traces.Replaying;

/// <summary>The steps of each kind of event, and the steps that tell the life of each task.</summary>
/// <remarks>4 bytes an event, and about 20 a task. Made in two passes over the events.</remarks>
internal sealed class StepLists
{
    private const int PartLength = 4096;

    private readonly Trace _trace;
    private readonly TaskTable _tasks;
    private readonly RunOptions _options;
    private readonly GroupedSteps _ofKind = new((int)EventKind.Stop + 1);
    private readonly GroupedSteps _ofTask;

    private StepLists(Trace trace, TaskTable tasks, RunOptions options)
    {
        (_trace, _tasks, _options) = (trace, tasks, options);
        _ofTask = new(tasks.Count);
    }

    /// <summary>Lists that are not ready before all their <see cref="Parts"/> are done.</summary>
    public static StepLists Begun(Trace trace, TaskTable tasks, RunOptions options) => new(trace, tasks, options);

    /// <summary>All the work in parts, each with about how many events it was worth.</summary>
    public IEnumerable<int> Parts()
    {
        for (int step = 0; step < _trace.Count; step += PartLength)
        {
            foreach (ref readonly TraceEvent item in _trace.Portion(step, PartLength))
            {
                _ofKind.Count((int)item.Kind);
                if (ActsOnItself(in item))
                    _ofTask.Count(item.Task);
                if (Creates(in item))
                    _ofTask.Count(item.Other);
            }

            yield return PartLength;
        }

        _ofKind.EndCounting();
        _ofTask.EndCounting();
        yield return _tasks.Count;
        for (int start = 0; start < _trace.Count; start += PartLength)
        {
            Fill(start);
            yield return PartLength;
        }
    }

    /// <summary>The nearest step of a kind at or after a step, of a worker or of any; -1 for none.</summary>
    public int Next(EventKind kind, int fromStep, int? worker)
    {
        ReadOnlySpan<int> steps = _ofKind.Of((int)kind);
        int index = steps.BinarySearch(fromStep);
        for (int i = index < 0 ? ~index : index; i < steps.Length; i++)
        {
            if (worker is null || _trace[steps[i]].Worker == worker)
                return steps[i];
        }

        return -1;
    }

    /// <summary>The nearest step of a kind before a step, of a worker or of any; -1 for none.</summary>
    public int Previous(EventKind kind, int beforeStep, int? worker)
    {
        ReadOnlySpan<int> steps = _ofKind.Of((int)kind);
        int index = steps.BinarySearch(beforeStep);
        for (int i = (index < 0 ? ~index : index) - 1; i >= 0; i--)
        {
            if (worker is null || _trace[steps[i]].Worker == worker)
                return steps[i];
        }

        return -1;
    }

    /// <summary>The life of a task, in order.</summary>
    public List<HistoryEntry> HistoryOf(int task)
    {
        var entries = new List<HistoryEntry>();
        bool isWaiting = false;
        foreach (int step in _ofTask.Of(task))
        {
            TraceEvent item = _trace[step];
            TaskTurn turn = TurnOf(in item, task);

            // A join that is passed at once is no turn: nothing happened to the task.
            if (turn == TaskTurn.GoesOn && !isWaiting)
                continue;
            isWaiting = turn == TaskTurn.Waits || (isWaiting && turn is TaskTurn.Taken or TaskTurn.Stolen);
            int other = turn is TaskTurn.Forked or TaskTurn.Called ? item.Task
                : turn == TaskTurn.Stolen ? item.Other : -1;
            entries.Add(new(step, item.Time, turn, item.Worker, other, IsQueuedBy(turn, step)));
        }

        return entries;
    }

    private void Fill(int start)
    {
        int step = start;
        foreach (ref readonly TraceEvent item in _trace.Portion(start, PartLength))
        {
            _ofKind.Add((int)item.Kind, step);
            if (ActsOnItself(in item))
                _ofTask.Add(item.Task, step);
            if (Creates(in item))
                _ofTask.Add(item.Other, step);
            step++;
        }
    }

    private bool Creates(in TraceEvent item) =>
        item.Kind is EventKind.Fork or EventKind.Call && _tasks.Knows(item.Other);

    private bool ActsOnItself(in TraceEvent item)
    {
        if (!_tasks.Knows(item.Task) || item.Task == item.Other && item.Kind is EventKind.Fork or EventKind.Call)
            return false;
        return item.Kind switch
        {
            EventKind.Begin or EventKind.End or EventKind.Take or EventKind.Steal or EventKind.JoinWait
                or EventKind.JoinPass or EventKind.Block or EventKind.Unblock => true,
            EventKind.Fork => _options is { ChildFirst: true, IsThreads: false },
            EventKind.Work or EventKind.Call or EventKind.Probe or EventKind.LostRace or EventKind.Empty
                or EventKind.Sleep or EventKind.Wake or EventKind.Stop => false,
        };
    }

    private static TaskTurn TurnOf(in TraceEvent item, int task) => item.Kind switch
    {
        EventKind.Fork => item.Other == task ? TaskTurn.Forked : TaskTurn.RestQueued,
        EventKind.Call => TaskTurn.Called,
        EventKind.Take => TaskTurn.Taken,
        EventKind.Steal => TaskTurn.Stolen,
        EventKind.Begin => TaskTurn.Begun,
        EventKind.JoinWait => TaskTurn.Waits,
        EventKind.JoinPass => TaskTurn.GoesOn,
        EventKind.Block => TaskTurn.Blocked,
        EventKind.Unblock => TaskTurn.Unblocked,
        _ => TaskTurn.Ended,
    };

    private bool IsQueuedBy(TaskTurn turn, int step) => turn switch
    {
        TaskTurn.Forked => !_options.ChildFirst && !_options.IsThreads,
        TaskTurn.RestQueued => true,
        TaskTurn.Stolen => StagePlayer.IsFurtherOfSteal(_trace, step),
        _ => false,
    };
}
