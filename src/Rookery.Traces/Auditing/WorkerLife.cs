using System.Globalization;

namespace Rookery.Traces.Auditing;

/// <summary>What the audit knows of a worker. Mutable.</summary>
internal sealed class WorkerLife
{
    private readonly List<TaskLife> _stack = [];

    public WorkerLife(int number)
    {
        Number = number;
        Deque = new TaskQueue(string.Create(CultureInfo.InvariantCulture, $"the deque of worker {number}"), this);
    }

    /// <summary>The worker's number.</summary>
    public int Number { get; }

    /// <summary>Its deque; stays empty where workers have none.</summary>
    public TaskQueue Deque { get; }

    /// <summary>Its last event; meaningless before the first.</summary>
    public TraceEvent Last { get; private set; }

    /// <summary>The step of its last event; -1 before the first.</summary>
    public int LastStep { get; private set; } = -1;

    /// <summary>The task that it took or stole and has not gone on with; null otherwise.</summary>
    public TaskLife? Hand { get; set; }

    /// <summary>The task that must begin next here: a callee, or a child that runs before its parent.</summary>
    public TaskLife? MustBegin { get; set; }

    /// <summary>The suspended task whose last child ended here and which must go on next.</summary>
    public TaskLife? MustPass { get; set; }

    /// <summary>Whether it sleeps.</summary>
    public bool IsAsleep { get; set; }

    /// <summary>Whether its task waits for something outside the processor.</summary>
    public bool IsBlocked { get; set; }

    /// <summary>Whether it stopped when the root had ended.</summary>
    public bool HasStopped { get; set; }

    /// <summary>Whether its last event but stops was a probe.</summary>
    public bool HasProbed { get; set; }

    /// <summary>The last probe.</summary>
    public TraceEvent Probe { get; set; }

    /// <summary>Whether the probe's victim held a child of the task that waits here.</summary>
    public bool ProbeWasFair { get; set; }

    /// <summary>Failed probes since it last found something.</summary>
    public int FailedProbes { get; set; }

    /// <summary>How many more tasks the steal under way may move.</summary>
    public int StealLeft { get; set; }

    /// <summary>When it was last stolen from; -1 for never.</summary>
    public long LastStolenTime { get; set; } = -1;

    /// <summary>Length of the stretch before its last event; without bound where that is unknown.</summary>
    public long LengthBefore { get; set; } = long.MaxValue;

    /// <summary>The task on top of its stack; null when there is none.</summary>
    public TaskLife? Current => _stack.Count == 0 ? null : _stack[^1];

    /// <summary>Number of chains on its stack.</summary>
    public int Depth => _stack.Count;

    /// <summary>Puts a task, with its callers, on top; wherever else it was, it is there no longer.</summary>
    public void Push(TaskLife task)
    {
        task.On?.Remove(task);
        _stack.Add(task);
        task.On = this;
        task.ChainStart.Holder = this;
    }

    /// <summary>Takes a task, with its callers, off the stack; it is on top unless the trace is broken.</summary>
    public void Remove(TaskLife task)
    {
        int index = _stack.LastIndexOf(task);
        if (index >= 0)
            _stack.RemoveAt(index);
        task.On = null;
        task.ChainStart.Holder = null;
    }

    /// <summary>Remembers the event that was just judged.</summary>
    public void Remember(int step, in TraceEvent item)
    {
        Last = item;
        LastStep = step;
        if (item.Kind != EventKind.Stop)
            HasProbed = item.Kind == EventKind.Probe;
    }
}
