using System.Collections.Immutable;

namespace Rookery.Traces.Replaying;

/// <summary>Plays events onto a copy of a stage. Mutable, for one thread.</summary>
/// <remarks>
/// The meaning of each kind is that of docs/trace.md. A worker is copied at its first event after a stage was handed
/// out, and changed in place from then on; where a queue changes, an event takes logarithmic time. Callers are implied
/// by their callee (<see cref="Frame"/>), so a deep stack of calls moves in one step.
/// </remarks>
internal sealed class StagePlayer
{
    // How far from its expected end a task is looked for: recorded traces may have neighbouring events in the wrong
    // order.
    private const int QueueReach = 64;
    private const int StackReach = 16;

    private readonly Trace _trace;
    private readonly TaskTable _tasks;
    private readonly RunOptions _options;
    private readonly Replay _replay;
    private readonly WorkerStage[] _workers;
    private ImmutableArray<WorkerStage> _kept;
    private ImmutableList<int> _shared;
    private int _step;
    private long _time;

    public StagePlayer(Replay replay, Stage from)
    {
        _replay = replay;
        _trace = replay.Trace;
        _tasks = replay.Tasks;
        _options = replay.Options;
        _kept = from.Workers;
        _workers = [.. _kept];
        _shared = from.SharedQueue;
        _step = from.Step;
        _time = from.Time;
    }

    /// <summary>The stage that is reached; what it holds is not changed any more.</summary>
    public Stage ToStage()
    {
        _kept = [.. _workers];
        return new(_replay, _step, _time, _kept, _shared);
    }

    public void PlayTo(int step)
    {
        while (_step < step)
        {
            foreach (ref readonly TraceEvent item in _trace.Portion(_step, step - _step))
            {
                _time = item.Time;
                if (item.Worker < _workers.Length)
                    Play(in item);
                _step++;
            }
        }
    }

    // A worker of a stage that was handed out is copied before its first change.
    private WorkerStage Own(int worker)
    {
        WorkerStage stage = _workers[worker];
        if (ReferenceEquals(stage, _kept[worker]))
            _workers[worker] = stage = stage with { };
        return stage;
    }

    private void Play(in TraceEvent item)
    {
        WorkerStage worker = Own(item.Worker);
        if (_tasks.Knows(item.Task))
            MoveTasks(in item, worker);
        bool hasFailed = item.Kind is EventKind.Empty or EventKind.LostRace && item.Other != item.Worker;
        bool hasSucceeded = item.Kind is EventKind.Take or EventKind.Steal or EventKind.Begin or EventKind.JoinPass
            or EventKind.Wake;
        worker.LastEvent = item.Kind;
        worker.LastStep = _step;
        worker.Since = item.Time;
        if (hasFailed)
            worker.FailedLooks = unchecked(worker.FailedLooks + 1);
        else if (hasSucceeded)
            worker.FailedLooks = 0;
        if (item.Kind == EventKind.Steal)
            worker.LastSuccess = item.Other;
        else if (hasFailed)
            worker.LastSuccess = -1;
    }

    private void MoveTasks(in TraceEvent item, WorkerStage worker)
    {
        var frame = new Frame(item.Task, item.Line);
        switch (item.Kind)
        {
            case EventKind.Begin:
                worker.Frames = Enter(worker.Frames, frame);
                break;
            case EventKind.Work or EventKind.Call or EventKind.Block or EventKind.Unblock or EventKind.JoinPass:
                worker.Frames = Surface(worker.Frames, frame);
                break;
            case EventKind.JoinWait:
                worker.Frames = Surface(worker.Frames, frame);
                if (_options.Suspends)
                    worker.Frames = worker.Frames.Pop();
                break;
            case EventKind.End:
                worker.Frames = Leave(worker.Frames, frame);
                break;
            case EventKind.Fork:
                Fork(in item, worker);
                break;
            case EventKind.Take:
                if (_options.IsShared)
                    _shared = Remove(_shared, item.Task, !_options.OwnerTakesOldest);
                else
                    worker.Deque = Remove(worker.Deque, item.Task, !_options.OwnerTakesOldest);
                worker.Frames = Enter(worker.Frames, new Frame(item.Task, 0));
                break;
            case EventKind.Steal:
                Steal(in item, worker);
                break;
        }
    }

    private void Fork(in TraceEvent item, WorkerStage worker)
    {
        worker.Frames = Surface(worker.Frames, new Frame(item.Task, item.Line));
        if (_options.IsThreads || !_tasks.Knows(item.Other))
            return;
        int queued = item.Other;
        if (_options.ChildFirst)
        {
            // The child is in the worker's hands from now on, though it begins when the fork has been paid for.
            queued = item.Task;
            worker.Frames = worker.Frames.Pop().Push(new Frame(item.Other, 0));
        }

        if (_options.IsShared)
            _shared = _shared.Add(queued);
        else
            worker.Deque = worker.Deque.Add(queued);
    }

    private void Steal(in TraceEvent item, WorkerStage worker)
    {
        if (item.Other >= 0 && item.Other < _workers.Length)
        {
            WorkerStage victim = Own(item.Other);
            victim.Deque = Remove(victim.Deque, item.Task, _options.ThiefTakesNewest);
        }

        if (IsFurtherOfSteal(_trace, _step))
            worker.Deque = worker.Deque.Add(item.Task);
        else
            worker.Frames = Enter(worker.Frames, new Frame(item.Task, 0));
    }

    /// <summary>Whether a steal is not the first of several that are one: those go to the thief's own deque.</summary>
    internal static bool IsFurtherOfSteal(Trace trace, int step)
    {
        if (step == 0)
            return false;
        ref readonly TraceEvent item = ref trace[step];
        ref readonly TraceEvent former = ref trace[step - 1];
        return item.Kind == EventKind.Steal && former.Kind == EventKind.Steal && former.Worker == item.Worker
            && former.Other == item.Other && former.Time == item.Time;
    }

    // A callee takes the place of its caller, which comes with it from then on.
    private ImmutableStack<Frame> Enter(ImmutableStack<Frame> frames, Frame frame)
    {
        if (frames.IsEmpty)
            return frames.Push(frame);
        int top = frames.Peek().Task;
        ref readonly TaskRecord record = ref _tasks[frame.Task];
        bool replaces = top == frame.Task || (record.IsCalled && record.Parent == top);
        return (replaces ? frames.Pop() : frames).Push(frame);
    }

    // What a worker acts on is its current task. In a lawful trace it is on top already, or comes back from suspension.
    private static ImmutableStack<Frame> Surface(ImmutableStack<Frame> frames, Frame frame)
    {
        // It mostly is on top already, at that line: nothing changes then.
        if (!frames.IsEmpty && frames.Peek() is var current && current.Task == frame.Task
            && (frame.Line <= 0 || current.Line == frame.Line))
            return frames;
        ImmutableStack<Frame> rest = frames;
        for (int i = 0; i < StackReach && !rest.IsEmpty; i++)
        {
            Frame top = rest.Peek();
            rest = rest.Pop();
            if (top.Task == frame.Task)
                return rest.Push(frame.Line > 0 ? frame : top);
        }

        return frames.Push(frame);
    }

    private ImmutableStack<Frame> Leave(ImmutableStack<Frame> frames, Frame frame)
    {
        frames = Surface(frames, frame).Pop();
        ref readonly TaskRecord record = ref _tasks[frame.Task];
        return record.IsCalled ? frames.Push(new Frame(record.Parent, record.Line)) : frames;
    }

    private static ImmutableList<int> Remove(ImmutableList<int> queue, int task, bool fromBottom)
    {
        int reach = Math.Min(QueueReach, queue.Count);
        for (int i = 0; i < reach; i++)
        {
            int index = fromBottom ? queue.Count - 1 - i : i;
            if (queue[index] == task)
                return queue.RemoveAt(index);
        }

        return queue;
    }
}
