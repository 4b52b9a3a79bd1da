using System.Runtime.InteropServices;

namespace Rookery.Traces.Replaying;

/// <summary>Reads the events of a trace once and fills the records of its tasks. Mutable, used once.</summary>
internal sealed class TaskTableBuilder
{
    private readonly Trace _trace;
    private readonly bool[] _hasChildren;
    private readonly List<int> _created = [];
    private readonly List<int> _ended = [];
    private readonly (int Task, long From)[] _working;

    public TaskTableBuilder(Trace trace)
    {
        _trace = trace;
        WorkerCount = CountWorkers(trace);
        _working = new (int, long)[WorkerCount];
        Array.Fill(_working, (-1, 0));
        int count = (int)Math.Min(Math.Max(trace.TaskCount, 0), 2L * trace.Count);
        Records = new TaskRecord[count];
        Array.Fill(Records, TaskRecord.Unknown);
        _hasChildren = new bool[count];
    }

    public TaskRecord[] Records { get; }

    public int WorkerCount { get; }

    public void ReadEvents()
    {
        int step = 0;
        for (int chunk = 0; chunk < _trace.ChunkCount; chunk++)
        {
            foreach (ref readonly TraceEvent item in _trace.Chunk(chunk))
                Read(step++, in item);
        }

        // A trace that was cut off in the middle of a work stretch: what was done up to its last event counts.
        for (int worker = 0; worker < WorkerCount; worker++)
            CloseWork(worker, _trace.Makespan);
    }

    public TaskForest BuildForest()
    {
        int[] parents = Array.ConvertAll(Records, r => r.Parent);
        for (int i = 0; i < Records.Length; i++)
            Records[i] = Records[i] with { TotalWork = Records[i].OwnWork };
        for (int i = _created.Count - 1; i >= 0; i--)
        {
            ref TaskRecord parent = ref Records[parents[_created[i]]];
            parent = parent with { TotalWork = Durations.Sum(parent.TotalWork, Records[_created[i]].TotalWork) };
        }

        return new TaskForest(parents, CollectionsMarshal.AsSpan(_created), CollectionsMarshal.AsSpan(_ended));
    }

    private static int CountWorkers(Trace trace)
    {
        int count = Math.Max(trace.Inputs.Workers, 0);
        for (int chunk = 0; chunk < trace.ChunkCount; chunk++)
        {
            foreach (ref readonly TraceEvent item in trace.Chunk(chunk))
                count = Math.Max(count, item.Worker + 1);
        }

        return Math.Min(count, Replay.WorkersMax);
    }

    private bool Knows(int task) => task >= 0 && task < Records.Length;

    private void Read(int step, in TraceEvent item)
    {
        if (item.Worker < WorkerCount)
            CloseWork(item.Worker, item.Time);
        if (!Knows(item.Task))
            return;
        ref TaskRecord record = ref Records[item.Task];
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
        ref TaskRecord record = ref Records[task];
        record = record with { OwnWork = Durations.Sum(record.OwnWork, Durations.Between(from, time)) };
        _working[worker].Task = -1;
    }

    // A child must have no parent and no children yet. So every edge leads from a task that is settled to one that is
    // not, and no circle can close, whatever the trace says.
    private void Link(int parent, int child, int step, int line, bool isCalled)
    {
        if (!Knows(parent) || !Knows(child) || parent == child)
            return;
        ref TaskRecord record = ref Records[child];
        if (record.Parent >= 0 || _hasChildren[child])
            return;
        _hasChildren[parent] = true;
        record = record with
        {
            Parent = parent,
            IsCalled = isCalled,
            Depth = Records[parent].Depth + 1,
            Line = line > 0 ? line : record.Line,
            OriginStep = step,
        };
        _created.Add(child);
    }
}
