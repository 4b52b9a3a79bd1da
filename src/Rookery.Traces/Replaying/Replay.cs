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
/// is no different from going anywhere else.
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

    private readonly int _interval;
    private readonly ImmutableArray<Stage> _kept;
    private readonly Lazy<WorkIndex> _work;
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
    {
        Trace = trace;
        Tasks = tasks;
        Options = new RunOptions(trace.Inputs);
        _interval = Math.Max(IntervalMin, IntervalPerWorker * tasks.WorkerCount);
        _work = new Lazy<WorkIndex>(() => new WorkIndex(trace, tasks));
        _kept = Play();
        _last = _kept[0];
    }

    /// <summary>What is replayed.</summary>
    public Trace Trace { get; }

    /// <summary>The tasks of the run.</summary>
    public TaskTable Tasks { get; }

    internal RunOptions Options { get; }

    internal WorkIndex Work => _work.Value;

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

    private ImmutableArray<Stage> Play()
    {
        var kept = ImmutableArray.CreateBuilder<Stage>((Trace.Count / _interval) + 1);
        WorkerStage[] workers = new WorkerStage[Tasks.WorkerCount];
        for (int i = 0; i < workers.Length; i++)
            workers[i] = new WorkerStage(i, Tasks);
        kept.Add(new Stage(this, 0, 0, ImmutableCollectionsMarshal.AsImmutableArray(workers), []));
        var player = new StagePlayer(this, kept[0]);
        for (int step = _interval; step <= Trace.Count; step += _interval)
        {
            player.PlayTo(step);
            kept.Add(player.ToStage());
        }

        return kept.MoveToImmutable();
    }
}
