using System.Collections.Immutable;
using Rookery.Traces.Replaying;

namespace Rookery.Traces.Narration;

// Thieves: whom they look at and why, what they move, and who came first.
internal sealed partial class FactFinder
{
    private EventFacts OfProbe(EventFacts facts, in TraceEvent item, Stage before, WorkerStage worker)
    {
        facts = facts with { OtherWorker = item.Other };
        if (item.Other < 0 || item.Other >= before.Workers.Length)
            return facts;
        return WithPlace(facts, before.Workers[item.Other].Deque, item.Task) with
        {
            Reason = ReasonFor(item.Other, before, worker),
            HasBegun = _tasks.Knows(item.Task) && before.HasBegun(item.Task),
        };
    }

    private VictimReason ReasonFor(int victim, Stage before, WorkerStage thief)
    {
        if (_replay.Options.AtJoin == "leapfrog" && thief.CurrentTask >= 0)
            return HasAwaitedChild(thief.CurrentTask, victim, before) ? VictimReason.HasAwaitedChild : VictimReason.Unknown;
        if (before.Workers.Length == 2)
            return VictimReason.OnlyOther;
        return _replay.Options.Victim switch
        {
            "random" => VictimReason.Random,
            "round-robin" => VictimReason.InTurn,
            "lowest" => VictimReason.Lowest,
            "nearest" => VictimReason.Nearest,
            "last-success" => thief.LastSuccess == victim ? VictimReason.LastSuccess : VictimReason.Random,
            "fullest" when IsFullest(victim, thief.Worker, before) => VictimReason.Fullest,
            _ => VictimReason.Unknown,
        };
    }

    private static bool IsFullest(int victim, int thief, Stage stage) =>
        stage.Workers.All(w => w.Worker == thief || w.Deque.Count <= stage.Workers[victim].Deque.Count);

    // Whether a child of the waiting task that has not ended was begun by that worker, or is queued near an end of its deque.
    private bool HasAwaitedChild(int waiting, int victim, Stage stage)
    {
        ReadOnlySpan<int> children = _tasks.ChildrenOf(waiting)[.._tasks.CreatedChildren(waiting, stage.Step)];
        ImmutableList<int> deque = stage.Workers[victim].Deque;
        for (int i = children.Length - 1; i >= Math.Max(0, children.Length - Reach); i--)
        {
            int child = children[i];
            if (stage.HasEnded(child) || _tasks[child].IsCalled)
                continue;
            if (stage.HasBegun(child) ? _tasks[child].BeginWorker == victim : IsNearAnEnd(deque, child))
                return true;
            if (stage.Workers[victim].CurrentTask == child)
                return true;
        }

        return false;
    }

    private static bool IsNearAnEnd(ImmutableList<int> deque, int task)
    {
        for (int i = 0; i < Math.Min(Reach, deque.Count); i++)
        {
            if (deque[i] == task || deque[deque.Count - 1 - i] == task)
                return true;
        }

        return false;
    }

    private EventFacts OfSteal(EventFacts facts, int step, in TraceEvent item)
    {
        int first = step;
        while (StagePlayer.IsFurtherOfSteal(_trace, first))
            first--;
        int end = step + 1;
        while (end < _trace.Count && StagePlayer.IsFurtherOfSteal(_trace, end))
            end++;
        Stage before = _replay.At(first);
        facts = facts with
        {
            OtherWorker = item.Other,
            StealIndex = step - first,
            StealCount = end - first,
            Work = before.MovableWork(item.Task),
            Callers = facts.HasBegun ? _tasks.CallChainOf(item.Task).Count() - 1 : 0,
        };
        int queued = QueuedStep(item.Task, step, facts.HasBegun);
        if (queued >= 0)
            facts = facts with { Waited = Durations.Between(_trace[queued].Time, item.Time) };
        if (item.Other < 0 || item.Other >= before.Workers.Length)
            return facts;
        return WithPlace(facts, before.Workers[item.Other].Deque, item.Task) with
        {
            After = _replay.At(end).Workers[item.Other].Deque.Count,
        };
    }

    // Whoever moved the task since this worker's last event came first. When nobody did, it is only no longer at that end.
    private EventFacts OfLostRace(EventFacts facts, int step, in TraceEvent item, WorkerStage worker)
    {
        facts = facts with { FailedLooks = unchecked(worker.FailedLooks + 1) };
        int move = _tasks.Knows(item.Task) ? _links.Moves.LatestBefore(item.Task, step) : -1;
        if (move > worker.LastStep && _trace[move].Worker != item.Worker)
        {
            facts = facts with
            {
                OtherWorker = _trace[move].Worker,
                Ago = Durations.Between(_trace[move].Time, item.Time),
            };
        }

        return facts with { Victim = item.Other };
    }
}
