using System.Collections.Immutable;

namespace Rookery.Traces.Replaying;

/// <summary>What one worker does and holds at one moment of a run.</summary>
/// <remarks>
/// Immutable once it is part of a stage: only a player changes its own copy. Neighbouring stages share all that did
/// not change. Equality compares collections by reference; nothing depends on it.
/// </remarks>
public sealed record WorkerStage
{
    private readonly TaskTable _tasks;

    internal WorkerStage(int worker, TaskTable tasks)
    {
        Worker = worker;
        _tasks = tasks;
    }

    /// <summary>Number of the worker, from 0.</summary>
    public int Worker { get; }

    /// <summary>Kind of its last event; <see cref="EventKind.Stop"/> before its first.</summary>
    public EventKind LastEvent { get; internal set; } = EventKind.Stop;

    /// <summary>Step of its last event; -1 before its first.</summary>
    public int LastStep { get; internal set; } = -1;

    /// <summary>What it does; <see cref="Stretch.Off"/> before its first event.</summary>
    public Stretch Stretch => Stretches.After(LastEvent);

    /// <summary>Since when: the time of its last event, 0 before its first.</summary>
    public long Since { get; internal set; }

    /// <summary>The tasks on this worker, outermost first, the current one last.</summary>
    /// <remarks>
    /// A waiting task stays (except under <c>at-join</c> = <c>suspend</c>), and so do callers. A task that was taken or
    /// stolen is here from then on, though it begins only when that has been paid for. Made when asked, in time linear
    /// in its length.
    /// </remarks>
    public ImmutableList<int> Stack => [.. Frames.Reverse().SelectMany(f => _tasks.CallChainOf(f.Task))];

    /// <summary>Its deque: index 0 is the top (the oldest, where thieves usually take), the last is the
    /// bottom.</summary>
    public ImmutableList<int> Deque { get; internal set; } = [];

    /// <summary>The task it runs or is about to run, or that waits on it; -1 for none.</summary>
    public int CurrentTask => Frames.IsEmpty ? -1 : Frames.Peek().Task;

    /// <summary>The line of the program at which its current task is; 0 when there is none or the trace doesn't
    /// say.</summary>
    public int Line => Frames.IsEmpty ? 0 : Frames.Peek().Line;

    /// <summary>Looks at victims that brought nothing, in a row, since it last had something to do or woke
    /// up.</summary>
    public int FailedLooks { get; internal set; }

    /// <summary>The victim of its last successful steal; -1 before the first, or when a later look failed.</summary>
    public int LastSuccess { get; internal set; } = -1;

    internal ImmutableStack<Frame> Frames { get; set; } = [];

    /// <summary>The frame below the current one: a task that waits under it; -1 for none.</summary>
    internal int TaskBelow => Frames.IsEmpty || Frames.Pop().IsEmpty ? -1 : Frames.Pop().Peek().Task;
}
