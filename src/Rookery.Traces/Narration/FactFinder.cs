using System.Collections.Immutable;
using System.Globalization;
using Rookery.Traces.Replaying;

namespace Rookery.Traces.Narration;

/// <summary>Computes the facts of an event from the stages before and after it. No words here.</summary>
/// <remarks>
/// Every look back or ahead is bounded, by a binary search or by a fixed number of steps, so that a sentence in the middle of
/// a long trace comes as fast as one at its start. Works on odd traces: what they do not tell stays unknown.
/// </remarks>
internal sealed partial class FactFinder
{
    /// <summary>How many siblings, forks or neighbours in a queue are looked at before giving up.</summary>
    private const int Reach = 64;

    private const int LabelMax = 80;

    private readonly Replay _replay;
    private readonly Trace _trace;
    private readonly TaskTable _tasks;
    private readonly TraceLinks _links;
    private readonly string _unnamed;

    public FactFinder(Replay replay, string unnamedTask)
    {
        _replay = replay;
        _trace = replay.Trace;
        _tasks = replay.Tasks;
        _links = new TraceLinks(_trace, _tasks);
        _unnamed = unnamedTask;
    }

    /// <summary>The facts of a step.</summary>
    public EventFacts Of(int step)
    {
        TraceEvent item = _trace[step];
        Stage before = _replay.At(step);
        var facts = new EventFacts
        {
            Kind = item.Kind,
            Worker = item.Worker,
            Options = _replay.Options,
            TimeUnit = _trace.Inputs.TimeUnit,
            Time = item.Time,
            Line = item.Line,
            Task = item.Task < 0 && NeedsTask(item.Kind) ? _unnamed : NameOf(item.Task),
            WorkerCount = _tasks.WorkerCount,
            AllWork = _tasks.Work,
            Starved = _trace.Inputs.Starved,
            Patience = int.TryParse(
                _trace.Inputs.Option("patience", ""), NumberStyles.None, CultureInfo.InvariantCulture, out int patience)
                ? patience
                : 0,
        };
        if (item.Worker >= before.Workers.Length)
            return facts;

        int next = _links.NextOnWorker(step);
        WorkerStage worker = before.Workers[item.Worker];
        facts = facts with
        {
            Former = worker.LastStep < 0 ? null : worker.LastEvent,
            Following = next < 0 ? null : _trace[next].Kind,
            Length = next < 0 ? null : Durations.Between(item.Time, _trace[next].Time),
            WaitingTask = NameOf(worker.CurrentTask),
            FailedLooks = worker.FailedLooks,
        };
        return WithKind(facts, step, in item, before, worker);
    }

    /// <summary>What a task is called; "" for none.</summary>
    public string NameOf(int task)
    {
        if (task < 0)
            return "";
        if (!_tasks.Knows(task))
            return _unnamed;
        string label = _trace.Labels.LabelOf(task);
        return label.Length <= LabelMax ? label : $"{label.AsSpan(0, LabelMax - 1)}…";
    }

    private EventFacts WithKind(EventFacts facts, int step, in TraceEvent item, Stage before, WorkerStage worker)
    {
        switch (item.Kind)
        {
            case EventKind.Probe:
                return OfProbe(facts, in item, before, worker);
            case EventKind.LostRace:
                return OfLostRace(facts, step, in item, worker);
            case EventKind.Empty:
                return facts with { OtherWorker = item.Other, FailedLooks = unchecked(worker.FailedLooks + 1) };
            case EventKind.Wake:
                return OfWake(facts, step, in item, worker);
            case EventKind.Sleep or EventKind.Stop:
                return facts;
            case EventKind.Unblock:
                return facts with
                {
                    Waited = worker.LastEvent == EventKind.Block ? Durations.Between(worker.Since, item.Time) : null,
                };
        }

        if (!_tasks.Knows(item.Task))
            return facts with { OtherTask = _unnamed };
        facts = facts with
        {
            HasBegun = before.HasBegun(item.Task),
            IsCalled = _tasks[item.Task].IsCalled,
            IsRoot = _tasks[item.Task].Parent < 0,
        };
        return item.Kind switch
        {
            EventKind.Begin => OfBegin(facts, in item, worker),
            EventKind.End => OfEnd(facts, step, in item),
            EventKind.Fork or EventKind.Call => OfFork(facts, step, in item),
            EventKind.Take => OfTake(facts, step, in item, before, worker),
            EventKind.Steal => OfSteal(facts, step, in item),
            EventKind.JoinWait => OfJoinWait(facts, step, in item, worker),
            EventKind.JoinPass => OfJoinPass(facts, step, in item),
            _ => facts,
        };
    }

    private EventFacts OfBegin(EventFacts facts, in TraceEvent item, WorkerStage worker)
    {
        ref readonly TaskRecord record = ref _tasks[item.Task];
        facts = facts with { OtherTask = NameOf(record.Parent) };
        if (record.Parent < 0)
            return facts with { Arrival = item.Other < 0 ? Arrival.Start : Arrival.Unknown };
        if (record.OriginStep < 0)
            return facts;
        ref readonly TraceEvent origin = ref _trace[record.OriginStep];
        bool isInHand = worker.CurrentTask == item.Task;
        Arrival arrival = (record.IsCalled, worker.LastEvent) switch
        {
            (true, _) => Arrival.Called,
            (_, EventKind.Take) when isInHand => Arrival.Taken,
            (_, EventKind.Steal) when isInHand => Arrival.Stolen,
            (_, EventKind.Fork) when isInHand => Arrival.RunsFirst,
            _ => _replay.Options.IsThreads ? Arrival.OwnThread : Arrival.Unknown,
        };
        return facts with
        {
            Arrival = arrival,
            OtherWorker = arrival == Arrival.Stolen ? _trace[worker.LastStep].Other : origin.Worker,
            Line = record.Line,
            Ago = Durations.Between(origin.Time, item.Time),
        };
    }

    private EventFacts OfEnd(EventFacts facts, int step, in TraceEvent item)
    {
        ref readonly TaskRecord record = ref _tasks[item.Task];
        WorkerStage after = _replay.At(step + 1).Workers[item.Worker];
        facts = facts with { After = QueueOf(_replay.At(step + 1), after).Count, WaitingTask = NameOf(after.CurrentTask) };
        if (record.Parent < 0)
            return facts;
        int wait = _links.Joins.LatestBefore(record.Parent, step);
        bool isWaiting = wait >= 0 && _trace[wait].Kind == EventKind.JoinWait;
        return facts with
        {
            OtherTask = NameOf(record.Parent),
            Unfinished = _tasks.UnfinishedChildren(record.Parent, step + 1),
            WasWaiting = isWaiting,
            OtherWorker = isWaiting ? _trace[wait].Worker : -1,
        };
    }

    private EventFacts OfFork(EventFacts facts, int step, in TraceEvent item)
    {
        Stage after = _replay.At(step + 1);
        return facts with
        {
            OtherTask = _tasks.Knows(item.Other) ? NameOf(item.Other) : _unnamed,
            After = QueueOf(after, after.Workers[item.Worker]).Count,
            Created = _tasks.CreatedChildren(item.Task, step + 1),
        };
    }

    private EventFacts OfTake(EventFacts facts, int step, in TraceEvent item, Stage before, WorkerStage worker)
    {
        Stage after = _replay.At(step + 1);
        int queued = QueuedStep(item.Task, step, facts.HasBegun);
        return WithPlace(facts, QueueOf(before, worker), item.Task) with
        {
            After = QueueOf(after, after.Workers[item.Worker]).Count,
            Waited = queued < 0 ? null : Durations.Between(_trace[queued].Time, item.Time),
            IsOwnFork = queued >= 0 && _trace[queued].Worker == item.Worker,
        };
    }

    private EventFacts OfJoinWait(EventFacts facts, int step, in TraceEvent item, WorkerStage worker)
    {
        bool isKnown = _tasks.Knows(item.Other);
        bool hasBegun = isKnown && IsBefore(_tasks[item.Other].BeginStep, step);
        return facts with
        {
            OtherTask = NameOf(item.Other),
            AwaitedHasBegun = hasBegun,
            OtherWorker = hasBegun ? _tasks[item.Other].BeginWorker : -1,
            Unfinished = _tasks.UnfinishedChildren(item.Task, step),
            After = worker.Deque.Count,
        };
    }

    private EventFacts OfJoinPass(EventFacts facts, int step, in TraceEvent item)
    {
        int wait = _links.Joins.LatestBefore(item.Task, step);
        bool wasWaiting = wait >= 0 && _trace[wait].Kind == EventKind.JoinWait;
        (int child, int endStep) = LastEndedFork(item.Task, step);
        return facts with
        {
            Created = _tasks.CreatedChildren(item.Task, step),
            Unfinished = _tasks.UnfinishedChildren(item.Task, step),
            WasWaiting = wasWaiting,
            Waited = wasWaiting ? Durations.Between(_trace[wait].Time, item.Time) : null,
            OtherTask = NameOf(child),
            OtherWorker = endStep < 0 ? -1 : _trace[endStep].Worker,
        };
    }

    private EventFacts OfWake(EventFacts facts, int step, in TraceEvent item, WorkerStage worker)
    {
        facts = facts with
        {
            OtherWorker = item.Other,
            Waited = worker.LastEvent == EventKind.Sleep ? Durations.Between(worker.Since, item.Time) : null,
        };
        int waiting = worker.CurrentTask;
        if (waiting >= 0 && _tasks.UnfinishedChildren(waiting, step) == 0)
        {
            (int child, int endStep) = LastEndedFork(waiting, step);
            return endStep < worker.LastStep || _trace[endStep].Worker != item.Other
                ? facts
                : facts with
                {
                    WakeReason = WakeReason.ChildrenEnded,
                    OtherTask = NameOf(child),
                    Ago = Durations.Between(_trace[endStep].Time, item.Time),
                };
        }

        int fork = WakingFork(step, in item, worker);
        return fork < 0
            ? facts
            : facts with
            {
                WakeReason = WakeReason.Fork,
                OtherTask = NameOf(_trace[fork].Other),
                Line = _trace[fork].Line,
                Ago = Durations.Between(_trace[fork].Time, item.Time),
            };
    }

    // The waker's last fork from which the wake can have come: it takes at least the machine's cost from signal to running.
    private int WakingFork(int step, in TraceEvent item, WorkerStage sleeper)
    {
        if (item.Other < 0 || item.Other >= _tasks.WorkerCount || sleeper.LastEvent != EventKind.Sleep)
            return -1;
        long latest = item.Time - Math.Clamp(_trace.Inputs.Cost("wake"), 0, Math.Max(0, item.Time));
        ReadOnlySpan<int> forks = _links.Forks.Before(item.Other, step);
        for (int i = forks.Length - 1; i >= Math.Max(0, forks.Length - Reach); i--)
        {
            if (forks[i] < sleeper.LastStep)
                return -1;
            if (_trace[forks[i]].Time <= latest)
                return forks[i];
        }

        return -1;
    }

    // Of the forked children of a task that have ended before a step, the last; called ones don't count.
    private (int Child, int EndStep) LastEndedFork(int task, int step)
    {
        ReadOnlySpan<int> ended = _tasks.EndedChildrenOf(task)[.._tasks.EndedChildren(task, step)];
        for (int i = ended.Length - 1; i >= Math.Max(0, ended.Length - Reach); i--)
        {
            if (!_tasks[ended[i]].IsCalled)
                return (ended[i], _tasks[ended[i]].EndStep);
        }

        return (-1, -1);
    }

    // When a task got into a queue: by its own fork, or as a continuation by its latest one. -1 when it can't be told.
    private int QueuedStep(int task, int step, bool hasBegun)
    {
        if (!hasBegun)
            return _tasks[task].OriginStep;
        ReadOnlySpan<int> children = _tasks.ChildrenOf(task)[.._tasks.CreatedChildren(task, step)];
        for (int i = children.Length - 1; i >= Math.Max(0, children.Length - Reach); i--)
        {
            if (!_tasks[children[i]].IsCalled)
                return _tasks[children[i]].OriginStep;
        }

        return -1;
    }

    private ImmutableList<int> QueueOf(Stage stage, WorkerStage worker) =>
        _replay.Options.IsShared ? stage.SharedQueue : worker.Deque;

    private static EventFacts WithPlace(EventFacts facts, ImmutableList<int> queue, int task) => facts with
    {
        Before = queue.Count,
        WasOldest = queue.Count > 0 && queue[0] == task,
        WasNewest = queue.Count > 0 && queue[^1] == task,
    };

    private static bool NeedsTask(EventKind kind) =>
        kind is not (EventKind.Probe or EventKind.Empty or EventKind.Sleep or EventKind.Wake or EventKind.Stop);

    private static bool IsBefore(int eventStep, int step) => eventStep >= 0 && eventStep < step;
}
