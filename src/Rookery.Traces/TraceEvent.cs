using System.Runtime.InteropServices;

namespace Rookery.Traces;

/// <summary>One event of a run.</summary>
/// <remarks>
/// 24 bytes, since traces hold millions: the kind shares a word with the worker. Tasks and workers are numbered from 0;
/// -1 stands for none. Times are integers in the unit of the trace (docs/trace.md). <c>default</c> is the beginning of
/// task 0 on worker 0 at time 0 with other task 0, which no run contains.
/// </remarks>
[StructLayout(LayoutKind.Auto)]
public readonly record struct TraceEvent
{
    /// <summary>The largest worker number that an event can hold.</summary>
    public const int WorkerMax = (1 << 24) - 1;

    private readonly uint _kindAndWorker;

    /// <summary>Makes an event.</summary>
    /// <param name="time">When it took effect, at least 0.</param>
    /// <param name="kind">What happened.</param>
    /// <param name="worker">On which worker, 0 to <see cref="WorkerMax"/>.</param>
    /// <param name="task">Which task acts or is moved, or -1.</param>
    /// <param name="other">The victim, waking worker, parent or child, as the kind says; -1 for none.</param>
    /// <param name="line">Line of the program, from 1; 0 for none.</param>
    public TraceEvent(long time, EventKind kind, int worker, int task, int other, int line)
    {
        unchecked
        {
            Time = time;
            Task = task;
            Other = other;
            Line = line;
            _kindAndWorker = ((uint)kind << 24) | ((uint)worker & WorkerMax);
        }
    }

    /// <summary>When it took effect, in the trace's unit of time.</summary>
    public long Time { get; }

    /// <summary>The task that acts, begins, ends or is moved; -1 for none.</summary>
    public int Task { get; }

    /// <summary>
    /// The other party: victim or waking worker, or parent or child task, as the kind says; -1 for none.
    /// </summary>
    public int Other { get; }

    /// <summary>The line of the program, from 1; 0 for none.</summary>
    public int Line { get; }

    /// <summary>What happened.</summary>
    // Both fit whatever the bits are, and are asked for with each event: a check would only cost.
    public EventKind Kind => unchecked((EventKind)(_kindAndWorker >> 24));

    /// <summary>The worker on which it happened, from 0.</summary>
    public int Worker => unchecked((int)(_kindAndWorker & WorkerMax));
}
