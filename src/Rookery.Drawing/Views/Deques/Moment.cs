using Rookery.Traces;
using Rookery.Traces.Replaying;

namespace Rookery.Drawing;

/// <summary>A stage with what a figure asks of it.</summary>
internal sealed class Moment
{
    private readonly Trace _trace;
    private readonly int _taskCount;

    // A figure asks for each several times: to find the scale, the room, and what to write.
    private readonly Dictionary<int, double> _work = [];
    private readonly Dictionary<int, string> _labels = [];

    public Moment(Replay replay, Stage stage)
    {
        var trace = replay.Trace;
        (_trace, _taskCount, Stage, Replay) = (trace, replay.Tasks.Count, stage, replay);
        HasDeques = trace.Inputs.Option("queues", "per-worker") is not ("shared" or "none");
        IsShared = trace.Inputs.Option("queues", "per-worker") == "shared";
        QueuesParent = trace.Inputs.Option("fork-runs", "parent") == "child";
        ThievesTakeNewest = trace.Inputs.Option("thief-takes", "oldest") == "newest";
        QueuedCount = stage.QueuedTasks;
    }

    public Replay Replay { get; }

    public Stage Stage { get; }

    /// <summary>Whether one queue serves all workers.</summary>
    public bool IsShared { get; }

    /// <summary>Whether each worker has a deque of its own.</summary>
    public bool HasDeques { get; }

    /// <summary>Whether a fork queues the rest of the parent, not the child.</summary>
    public bool QueuesParent { get; }

    /// <summary>Whether thieves take from the bottom.</summary>
    public bool ThievesTakeNewest { get; }

    /// <summary>Tasks in all queues.</summary>
    public int QueuedCount { get; }

    /// <summary>The event that led here; null at the beginning.</summary>
    public TraceEvent? Last => Stage.Step == 0 ? null : _trace[Stage.Step - 1];

    public string LabelOf(int task)
    {
        if (task < 0)
            return "";
        if (!_labels.TryGetValue(task, out var label))
            _labels.Add(task, label = _trace.Labels.LabelOf(task));
        return label;
    }

    /// <summary>
    /// The work that goes with a queued task when it is taken; 0 for a task that the trace does not know.
    /// </summary>
    public double WorkIn(int task)
    {
        if (task < 0 || task >= _taskCount)
            return 0;
        if (!_work.TryGetValue(task, out var work))
            _work.Add(task, work = Math.Max(0, Stage.MovableWork(task)));
        return work;
    }

    /// <summary>The trace's unit of time.</summary>
    public string Unit => _trace.Inputs.TimeUnit;

    /// <summary>What a worker is doing, in a word or two.</summary>
    public static string StateOf(WorkerStage worker, DrawingWords words) =>
        words.State(worker.Stretch, worker.LastEvent == EventKind.JoinWait);
}
