using System.Collections.Immutable;
using System.Runtime.InteropServices;

namespace Rookery.Traces.Replaying;

/// <summary>Gives the whole state of a run at any step: what every worker does, and what every queue holds.</summary>
/// <remarks>
/// <para>
/// The events are played once, and every so many steps the state is kept. To get to a step, the replay takes the
/// nearest kept state before it and plays on from there: a few hundred events at most, whatever the length of the
/// trace. Kept states share their parts, so they cost little: a list of references to workers that have mostly not
/// changed. The last stage asked for is kept as well, so that going on step by step plays one event a step. Going back
/// is no different from going anywhere else. <see cref="ReplayBuilder"/> makes a replay in portions.
/// </para>
/// <para>
/// Plays odd traces without complaint (the audit is the judge): what is taken from a queue that does not hold it
/// changes nothing in the queue, and whatever a worker acts on becomes its current task. Immutable as seen from
/// outside; safe to use from several threads.
/// </para>
/// </remarks>
public sealed class Replay
{
    /// <summary>The largest number of workers that are replayed: 2^20. Events of workers above are passed
    /// over.</summary>
    public const int WorkersMax = 1 << 20;

    private const int IntervalMin = 256;

    // A kept stage may hold a record for each worker: with many workers the steps between two grow with them, so that
    // what is kept stays within some 30 bytes an event.
    private const int IntervalPerWorker = 8;

    private const int PartLength = 4096;

    private readonly int _interval;
    private readonly List<Stage> _kept = [];
    private WorkIndex? _work;
    private CountIndex? _counts;
    private StepLists? _steps;
    private long _largestQueued = -1;
    private Stage _last;

    /// <summary>Plays the trace once, in time proportional to its length.</summary>
    public Replay(Trace trace)
        : this(trace, TaskTable.From(trace))
    {
    }

    /// <summary>As above, with a table that has been made already.</summary>
    /// <param name="trace">The trace.</param>
    /// <param name="tasks">The table of that very trace.</param>
    public Replay(Trace trace, TaskTable tasks)
        : this(tasks, trace)
    {
        foreach (int _ in StageParts())
        {
        }
    }

    // Nothing is played yet: a builder goes through the parts.
    private Replay(TaskTable tasks, Trace trace)
    {
        Trace = trace;
        Tasks = tasks;
        Options = new RunOptions(trace.Inputs);
        _interval = Math.Max(IntervalMin, IntervalPerWorker * tasks.WorkerCount);
        WorkerStage[] workers = new WorkerStage[tasks.WorkerCount];
        for (int i = 0; i < workers.Length; i++)
            workers[i] = new WorkerStage(i, tasks);
        _last = new Stage(this, 0, 0, ImmutableCollectionsMarshal.AsImmutableArray(workers), []);
    }

    /// <summary>What is replayed.</summary>
    public Trace Trace { get; }

    /// <summary>The tasks of the run.</summary>
    public TaskTable Tasks { get; }

    internal RunOptions Options { get; }

    /// <summary>
    /// The most work that any task contained when it was queued; 0 when none was. One scale for figures of several
    /// steps.
    /// </summary>
    public long LargestQueuedWork
    {
        get
        {
            if (_largestQueued < 0)
            {
                foreach (int _ in QueuedParts())
                {
                }
            }

            return _largestQueued;
        }
    }

    // Two callers that come at once may both make one of these; one of two equal ones stays.
    internal WorkIndex Work => _work ??= WorkIndex.Of(Trace, Tasks);

    private CountIndex Counts => _counts ??= Whole(CountIndex.Begun(Trace), index => index.Parts());

    private StepLists Steps => _steps ??= Whole(StepLists.Begun(Trace, Tasks, Options), lists => lists.Parts());

    /// <summary>The state after the first <paramref name="step"/> events.</summary>
    /// <param name="step">From 0 (nothing has happened) to the number of events (all has).</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such step.</exception>
    public Stage At(int step)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(step);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(step, Trace.Count);
        Stage from = _kept[step / _interval];
        Stage last = _last;
        if (last.Step <= step && last.Step > from.Step)
            from = last;
        if (from.Step == step)
            return from;
        var player = new StagePlayer(this, from);
        player.PlayTo(step);
        Stage stage = player.ToStage();

        // A race between two callers loses one of two good starting points, no more.
        _last = stage;
        return stage;
    }

    /// <summary>How much has happened in the first <paramref name="step"/> events.</summary>
    /// <param name="step">From 0 (nothing has happened) to the number of events (all has).</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such step.</exception>
    public RunCounts CountsAt(int step)
    {
        Stage stage = At(step);
        return Counts.At(step) with { Work = stage.WorkDone };
    }

    /// <summary>The life of a task in order: forked, queued, stolen, begun, waiting, ended.</summary>
    /// <param name="task">A task of the table.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such task.</exception>
    public ImmutableArray<HistoryEntry> HistoryOf(int task)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(task);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(task, Tasks.Count);
        return [.. Steps.HistoryOf(task)];
    }

    /// <summary>The first event of a kind at or after a step; -1 when there is none.</summary>
    /// <param name="kind">Which events are meant.</param>
    /// <param name="fromStep">A step; one beyond the end finds nothing.</param>
    /// <param name="worker">On which worker; null (default) for any.</param>
    public int NextOf(EventKind kind, int fromStep, int? worker = null) => Steps.Next(kind, fromStep, worker);

    /// <summary>The last event of a kind before a step; -1 when there is none.</summary>
    /// <param name="kind">Which events are meant.</param>
    /// <param name="beforeStep">A step, or the number of events for the last of all.</param>
    /// <param name="worker">On which worker; null (default) for any.</param>
    public int PreviousOf(EventKind kind, int beforeStep, int? worker = null) =>
        Steps.Previous(kind, beforeStep, worker);

    /// <summary>A replay of which no part is done, for a builder.</summary>
    internal static Replay Begun(Trace trace, TaskTable tasks) => new(tasks, trace);

    /// <summary>
    /// All that it takes to show any step, in parts, each with about how many events it was worth.
    /// </summary>
    internal IEnumerable<int> Parts()
    {
        foreach (int done in StageParts())
            yield return done;
        var index = WorkIndex.Begun(Trace, Tasks);
        foreach (int done in index.Parts())
            yield return done;
        _work = index;
        foreach (int done in QueuedParts())
            yield return done;
        var counts = CountIndex.Begun(Trace);
        foreach (int done in counts.Parts())
            yield return done;
        _counts = counts;
    }

    /// <summary>The lists of steps beforehand, in such parts.</summary>
    internal IEnumerable<int> ListParts()
    {
        if (_steps is not null)
            yield break;
        var steps = StepLists.Begun(Trace, Tasks, Options);
        foreach (int done in steps.Parts())
            yield return done;
        _steps = steps;
    }

    private static T Whole<T>(T index, Func<T, IEnumerable<int>> parts)
    {
        foreach (int _ in parts(index))
        {
        }

        return index;
    }

    private IEnumerable<int> StageParts()
    {
        _kept.Add(_last);
        var player = new StagePlayer(this, _last);
        for (int step = _interval; step <= Trace.Count; step += _interval)
        {
            player.PlayTo(step);
            _kept.Add(player.ToStage());
            yield return _interval;
        }
    }

    private IEnumerable<int> QueuedParts()
    {
        var work = new QueuedWork(Trace, Tasks);
        yield return Tasks.Count;
        long largest = 0;
        for (int step = 0; step < Trace.Count; step += PartLength)
        {
            largest = Math.Max(largest, LargestIn(work, step));
            yield return PartLength;
        }

        _largestQueued = largest;
    }

    private long LargestIn(QueuedWork work, int step)
    {
        long largest = 0;
        foreach (ref readonly TraceEvent item in Trace.Portion(step, PartLength))
        {
            long amount = work.After(in item);
            if (item.Kind == EventKind.Fork)
                largest = Math.Max(largest, amount);
        }

        return largest;
    }
}
