using Rookery.Traces.Replaying;

namespace Rookery.Traces.Narration;

/// <summary>Ways from an event to others that explain it, made in a few passes when first needed.</summary>
/// <remarks>About 6 bytes an event: the next event of the same worker, and lists of takes, joins and forks.</remarks>
internal sealed class TraceLinks
{
    private readonly int[] _next;

    public TraceLinks(Trace trace, TaskTable tasks)
    {
        _next = new int[trace.Count];
        int[] following = new int[tasks.WorkerCount];
        Array.Fill(following, -1);
        for (int step = trace.Count - 1; step >= 0; step--)
        {
            int worker = trace[step].Worker;
            if (worker >= following.Length)
                continue;
            _next[step] = following[worker];
            following[worker] = step;
        }

        Moves = new(trace, tasks.Count, e => e.Kind is EventKind.Take or EventKind.Steal ? e.Task : -1);
        Joins = new(trace, tasks.Count, e => e.Kind is EventKind.JoinWait or EventKind.JoinPass ? e.Task : -1);
        Forks = new(trace, tasks.WorkerCount, e => e.Kind == EventKind.Fork ? e.Worker : -1);
    }

    /// <summary>Takes and steals of each task.</summary>
    public StepIndex Moves { get; }

    /// <summary>Waits and passes at joins of each task.</summary>
    public StepIndex Joins { get; }

    /// <summary>Forks of each worker.</summary>
    public StepIndex Forks { get; }

    /// <summary>The next event of the worker of an event; -1 when there is none.</summary>
    public int NextOnWorker(int step) => _next[step];
}
