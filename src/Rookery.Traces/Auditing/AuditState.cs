using System.Runtime.CompilerServices;

namespace Rookery.Traces.Auditing;

/// <summary>What the audit knows at one step: shared by its rules. Mutable, for one thread.</summary>
internal sealed class AuditState
{
    private readonly Dictionary<int, TaskLife> _live = [];
    private readonly List<WorkerLife?> _workers = [];
    private readonly NumberSet _begun = new();
    private readonly NumberSet _ended = new();

    public AuditState(Trace trace, FindingList findings)
    {
        Findings = findings;
        Options = new AuditOptions(trace.Inputs, findings);
    }

    /// <summary>The options by which the trace is judged.</summary>
    public AuditOptions Options { get; }

    /// <summary>What was found.</summary>
    public FindingList Findings { get; }

    /// <summary>The queue that all share.</summary>
    public TaskQueue SharedQueue { get; } = new("the shared queue", null);

    /// <summary>The step that is judged.</summary>
    public int Step { get; private set; }

    /// <summary>The event that is judged.</summary>
    public TraceEvent Event { get; private set; }

    /// <summary>Whether the root has ended.</summary>
    public bool RootHasEnded { get; set; }

    /// <summary>The longest path to the end of any task.</summary>
    public long Span { get; set; }

    /// <summary>Number of tasks that have begun.</summary>
    public int BegunCount { get; private set; }

    /// <summary>The tasks that were made and have not ended.</summary>
    public IEnumerable<TaskLife> LiveTasks => _live.Values.OrderBy(t => t.Number);

    /// <summary>The workers that have had an event or were looked at, in order of numbers.</summary>
    public IEnumerable<WorkerLife> Workers => _workers.OfType<WorkerLife>();

    /// <summary>Moves on to an event.</summary>
    public void MoveTo(int step, in TraceEvent item)
    {
        Step = step;
        Event = item;
    }

    /// <summary>Reports that the event that is judged breaks a rule.</summary>
    public void Report(AuditRule rule, [InterpolatedStringHandlerArgument("")] ref FindingText what) =>
        Findings.Add(rule, Step, Event.Worker, Event.Task, ref what);

    /// <summary>A worker, made when first asked for.</summary>
    public WorkerLife Worker(int number)
    {
        while (_workers.Count <= number)
            _workers.Add(null);
        return _workers[number] ??= new WorkerLife(number);
    }

    /// <summary>A task that was made and has not ended; null when there is none of that number.</summary>
    public TaskLife? Live(int task) => _live.GetValueOrDefault(task);

    /// <summary>A task of that number, made up when the trace has not explained it: findings have said so.</summary>
    public TaskLife LiveOrNew(int task)
    {
        if (!_live.TryGetValue(task, out TaskLife? life))
            _live.Add(task, life = new TaskLife(task));
        return life;
    }

    /// <summary>Whether a task has begun.</summary>
    public bool HasBegun(int task) => _begun.Contains(task);

    /// <summary>Whether a task has ended.</summary>
    public bool HasEnded(int task) => _ended.Contains(task);

    /// <summary>Notes that a task begins.</summary>
    public void NoteBegin(TaskLife task)
    {
        task.HasBegun = true;
        _begun.Add(task.Number);
        BegunCount++;
    }

    /// <summary>Notes that a task ends, and forgets it.</summary>
    public void NoteEnd(TaskLife task)
    {
        _ended.Add(task.Number);
        _live.Remove(task.Number);
        Span = Math.Max(Span, task.Path);
    }

    /// <summary>The longest path of all, the tasks that have not ended included.</summary>
    public long SpanSoFar() => _live.Values.Select(t => Math.Max(t.Path, t.ChildrenPath)).Append(Span).Max();
}
