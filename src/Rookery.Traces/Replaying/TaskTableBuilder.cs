namespace Rookery.Traces.Replaying;

/// <summary>Reads the events of a trace once and fills the records of its tasks. Mutable, used once.</summary>
/// <remarks>In parts (<see cref="Parts"/>), so that a page with one thread can do something else in between.</remarks>
internal sealed class TaskTableBuilder
{
    private const int PartLength = 4096;

    private readonly Trace _trace;
    private readonly TaskRecord[] _records;

    // Kept beside the records: most events are about work, and a record is large to change.
    private readonly long[] _ownWork;
    private readonly bool[] _hasChildren;
    private readonly List<int> _created = [];
    private readonly List<int> _ended = [];
    private readonly (int Task, long From)[] _working;
    private TaskForest? _forest;
    private long _work;

    public TaskTableBuilder(Trace trace)
    {
        _trace = trace;
        WorkerCount = Math.Min(Math.Max(trace.Inputs.Workers, trace.WorkerCount), Replay.WorkersMax);
        _working = new (int, long)[WorkerCount];
        Array.Fill(_working, (-1, 0));
        int count = (int)Math.Min(Math.Max(trace.TaskCount, 0), 2L * trace.Count);
        _records = new TaskRecord[count];
        Array.Fill(_records, TaskRecord.Unknown);
        _ownWork = new long[count];
        _hasChildren = new bool[count];
    }

    public int WorkerCount { get; }

    /// <summary>All the work in parts, each with about how many events it was worth.</summary>
    public IEnumerable<int> Parts()
    {
        for (int step = 0; step < _trace.Count;)
        {
            int length = Read(step);
            step += length;
            yield return length;
        }

        // A trace that was cut off in the middle of a work stretch: what was done up to its last event counts.
        for (int worker = 0; worker < WorkerCount; worker++)
            CloseWork(worker, _trace.Makespan);
        int[] parents = new int[_records.Length];
        for (int i = 0; i < parents.Length; i++)
            parents[i] = _records[i].Parent;
        yield return parents.Length;
        AddWork(parents);
        yield return parents.Length;
        var forest = new TaskForest(parents.Length);
        foreach (int done in forest.Parts(parents, _created, _ended))
            yield return done;
        _forest = forest;
    }

    /// <summary>The table, when all parts are done.</summary>
    public TaskTable Build() => new(_records, _forest!, WorkerCount, _work);

    private int Read(int step)
    {
        ReadOnlySpan<TraceEvent> events = _trace.Portion(step, PartLength);
        foreach (ref readonly TraceEvent item in events)
            Read(step++, in item);
        return events.Length;
    }

    private void AddWork(int[] parents)
    {
        long[] total = (long[])_ownWork.Clone();
        for (int i = _created.Count - 1; i >= 0; i--)
        {
            ref long parent = ref total[parents[_created[i]]];
            parent = Durations.Sum(parent, total[_created[i]]);
        }

        for (int i = 0; i < total.Length; i++)
        {
            _records[i] = _records[i] with { OwnWork = _ownWork[i], TotalWork = total[i] };
            _work = Durations.Sum(_work, _ownWork[i]);
        }
    }

    private bool Knows(int task) => task >= 0 && task < _records.Length;

    private void Read(int step, in TraceEvent item)
    {
        if (item.Worker < WorkerCount)
            CloseWork(item.Worker, item.Time);
        if (!Knows(item.Task))
            return;
        ref TaskRecord record = ref _records[item.Task];
        switch (item.Kind)
        {
            case EventKind.Work when item.Worker < WorkerCount:
                _working[item.Worker] = (item.Task, item.Time);
                break;
            case EventKind.Fork or EventKind.Call:
                Link(item.Task, item.Other, step, item.Line, item.Kind == EventKind.Call);
                break;
            case EventKind.Begin when record.BeginStep < 0:
                Link(item.Other, item.Task, step: -1, line: item.Line, isCalled: false);
                record = record with { BeginStep = step, BeginWorker = item.Worker };
                if (record.Line == 0)
                    record = record with { Line = item.Line };
                break;
            case EventKind.End when record.EndStep < 0:
                record = record with { EndStep = step, EndWorker = item.Worker };
                _ended.Add(item.Task);
                break;
            case EventKind.Steal:
                record = record with { Steals = record.Steals + 1 };
                break;
        }
    }

    private void CloseWork(int worker, long time)
    {
        (int task, long from) = _working[worker];
        if (task < 0)
            return;
        _ownWork[task] = Durations.Sum(_ownWork[task], Durations.Between(from, time));
        _working[worker].Task = -1;
    }

    // A child must have no parent and no children yet. So every edge leads from a task that is settled to one that is
    // not, and no circle can close, whatever the trace says.
    private void Link(int parent, int child, int step, int line, bool isCalled)
    {
        if (!Knows(parent) || !Knows(child) || parent == child)
            return;
        ref TaskRecord record = ref _records[child];
        if (record.Parent >= 0 || _hasChildren[child])
            return;
        _hasChildren[parent] = true;
        record = record with
        {
            Parent = parent,
            IsCalled = isCalled,
            Depth = _records[parent].Depth + 1,
            Line = line > 0 ? line : record.Line,
            OriginStep = step,
        };
        _created.Add(child);
    }
}
