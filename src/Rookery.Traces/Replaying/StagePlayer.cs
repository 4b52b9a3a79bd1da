using System.Collections.Immutable;

namespace Rookery.Traces.Replaying;

/// <summary>Plays events onto a copy of a stage. Mutable, for one thread.</summary>
/// <remarks>
/// The meaning of each kind is that of docs/trace.md. An event costs one new worker record, and logarithmic time where
/// a queue changes. Callers are implied by their callee (<see cref="Frame"/>), so a deep stack of calls moves in one
/// step.
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
    private ImmutableList<int> _shared;
    private int _step;
    private long _time;

    public StagePlayer(Replay replay, Stage from)
    {
        _replay = replay;
        _trace = replay.Trace;
        _tasks = replay.Tasks;
        _options = replay.Options;
        _workers = [.. from.Workers];
        _shared = from.SharedQueue;
        _step = from.Step;
        _time = from.Time;
    }

    public Stage ToStage() => new(_replay, _step, _time, [.. _workers], _shared);

    public void PlayTo(int step)
    {
        for (; _step < step; _step++)
        {
            ref readonly TraceEvent item = ref _trace[_step];
            _time = item.Time;
            if (item.Worker < _workers.Length)
                _workers[item.Worker] = Play(_workers[item.Worker], in item);
        }
    }

    private WorkerStage Play(WorkerStage old, in TraceEvent item)
    {
        ImmutableStack<Frame> frames = old.Frames;
        ImmutableList<int> deque = old.Deque;
        if (_tasks.Knows(item.Task))
            MoveTasks(in item, ref frames, ref deque);
        bool hasFailed = item.Kind is EventKind.Empty or EventKind.LostRace && item.Other != item.Worker;
        bool hasSucceeded = item.Kind is EventKind.Take or EventKind.Steal or EventKind.Begin or EventKind.JoinPass
            or EventKind.Wake;
        return old with
        {
            LastEvent = item.Kind,
            LastStep = _step,
            Since = item.Time,
            Frames = frames,
            Deque = deque,
            FailedLooks = hasFailed ? unchecked(old.FailedLooks + 1) : hasSucceeded ? 0 : old.FailedLooks,
            LastSuccess = item.Kind == EventKind.Steal ? item.Other : hasFailed ? -1 : old.LastSuccess,
        };
    }

    private void MoveTasks(in TraceEvent item, ref ImmutableStack<Frame> frames, ref ImmutableList<int> deque)
    {
        var frame = new Frame(item.Task, item.Line);
        switch (item.Kind)
        {
            case EventKind.Begin:
                frames = Enter(frames, frame);
                break;
            case EventKind.Work or EventKind.Call or EventKind.Block or EventKind.Unblock or EventKind.JoinPass:
                frames = Surface(frames, frame);
                break;
            case EventKind.JoinWait:
                frames = Surface(frames, frame);
                if (_options.Suspends)
                    frames = frames.Pop();
                break;
            case EventKind.End:
                frames = Leave(frames, frame);
                break;
            case EventKind.Fork:
                Fork(in item, ref frames, ref deque);
                break;
            case EventKind.Take:
                if (_options.IsShared)
                    _shared = Remove(_shared, item.Task, !_options.OwnerTakesOldest);
                else
                    deque = Remove(deque, item.Task, !_options.OwnerTakesOldest);
                frames = Enter(frames, new Frame(item.Task, 0));
                break;
            case EventKind.Steal:
                Steal(in item, ref frames, ref deque);
                break;
        }
    }

    private void Fork(in TraceEvent item, ref ImmutableStack<Frame> frames, ref ImmutableList<int> deque)
    {
        frames = Surface(frames, new Frame(item.Task, item.Line));
        if (_options.IsThreads || !_tasks.Knows(item.Other))
            return;
        int queued = item.Other;
        if (_options.ChildFirst)
        {
            // The child is in the worker's hands from now on, though it begins when the fork has been paid for.
            queued = item.Task;
            frames = frames.Pop().Push(new Frame(item.Other, 0));
        }

        if (_options.IsShared)
            _shared = _shared.Add(queued);
        else
            deque = deque.Add(queued);
    }

    private void Steal(in TraceEvent item, ref ImmutableStack<Frame> frames, ref ImmutableList<int> deque)
    {
        if (item.Other == item.Worker)
            deque = Remove(deque, item.Task, _options.ThiefTakesNewest);
        else if (item.Other >= 0 && item.Other < _workers.Length)
        {
            WorkerStage victim = _workers[item.Other];
            _workers[item.Other] = victim with { Deque = Remove(victim.Deque, item.Task, _options.ThiefTakesNewest) };
        }

        if (IsFurtherOfSteal(_trace, _step))
            deque = deque.Add(item.Task);
        else
            frames = Enter(frames, new Frame(item.Task, 0));
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
