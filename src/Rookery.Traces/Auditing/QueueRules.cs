using System.Globalization;
using Rookery.Traces.Files;

namespace Rookery.Traces.Auditing;

/// <summary>Rules about queues: what is in them, from which end it leaves, and what thieves may see and take.</summary>
internal sealed class QueueRules(AuditState state)
{
    /// <summary>Judges an owner's take: AU034, AU035, AU040, AU041, AU042.</summary>
    public void Take(WorkerLife worker)
    {
        CheckFree(worker);
        worker.FailedProbes = 0;
        if (state.Options.HasThreads)
        {
            state.Report(AuditRules.QueueExists,
                $"Worker {worker.Number} takes a task, but nothing is queued in this run.");
            return;
        }

        TaskQueue queue = state.Options.HasSharedQueue ? state.SharedQueue : worker.Deque;
        GoOnWith(worker, TakenFrom(queue, state.Options.OwnerTakesNewest));
    }

    /// <summary>Judges a look at a victim: AU034, AU035, AU040, AU044.</summary>
    public void Probe(WorkerLife worker)
    {
        CheckFree(worker);
        worker.Probe = state.Event;
        worker.ProbeWasFair = false;
        if (!HasVictims(worker))
            return;
        WorkerLife victim = state.Worker(state.Event.Other);
        int there = SeenAt(victim);
        if (there != state.Event.Task)
        {
            state.Report(
                AuditRules.ProbeSees,
                $"Worker {worker.Number} sees {Named(state.Event.Task)}, but at that end of {victim.Deque.Name} is "
                + $"{Named(there)}.");
        }

        worker.ProbeWasFair = state.Options.Leapfrogs && HoldsAwaited(worker, victim);
    }

    /// <summary>Judges a steal: AU034, AU035, AU040 to AU043, AU047, AU049, AU051.</summary>
    public void Steal(WorkerLife worker)
    {
        worker.FailedProbes = 0;
        if (!HasVictims(worker))
            return;
        WorkerLife victim = state.Worker(state.Event.Other);
        if (worker.Last.Kind == EventKind.Steal && worker.LastStep >= 0 && worker.Last.Time == state.Event.Time
            && worker.Last.Other == victim.Number && worker.Hand is not null)
        {
            StealMore(worker, victim);
            return;
        }

        CheckFree(worker);
        CheckProbed(worker, state.Event.Task);
        bool isFair = worker.HasProbed && worker.Probe.Other == victim.Number
            ? worker.ProbeWasFair
            : HoldsAwaited(worker, victim);
        if (state.Options.Leapfrogs && worker.Current is { IsWaiting: true } waiting && !isFair)
        {
            state.Report(
                AuditRules.Leapfrog,
                $"Worker {worker.Number} waits with task {waiting.Number} and steals from worker {victim.Number}, "
                + $"which holds none of its children.");
        }

        CheckSpacing(victim);
        worker.StealLeft = state.Options.TakesHalf ? (victim.Deque.Count + 1) / 2 : 1;
        worker.StealLeft--;
        GoOnWith(worker, TakenFrom(victim.Deque, state.Options.ThiefTakesNewest));
    }

    /// <summary>Judges a lost race: AU034, AU035, AU040, AU045, AU047.</summary>
    public void LostRace(WorkerLife worker)
    {
        CheckFree(worker);
        if (!HasVictims(worker))
            return;
        TaskLife? task = state.Live(state.Event.Task);
        bool isOwner = state.Event.Other == worker.Number;
        WorkerLife victim = state.Worker(state.Event.Other);
        if (!isOwner)
        {
            worker.FailedProbes++;
            CheckProbed(worker, state.Event.Task);
        }

        if (task is not null && (isOwner ? task.Queue == victim.Deque : SeenAt(victim) == task.Number))
            state.Report(AuditRules.RaceWasLost, $"Task {task.Number} is still in {victim.Deque.Name}.");
    }

    /// <summary>Judges that nothing was found: AU034, AU035, AU040, AU046, AU047.</summary>
    public void Empty(WorkerLife worker)
    {
        CheckFree(worker);
        if (state.Event.Other >= 0)
        {
            worker.FailedProbes++;
            if (HasVictims(worker))
                CheckProbed(worker, -1);
        }
        else if (!state.Options.HasSharedQueue)
            state.Report(AuditRules.QueueExists,
                $"Worker {worker.Number} looks into a shared queue, but there is none.");
        else if (state.SharedQueue.At(false) is { } task)
            state.Report(AuditRules.EmptyIsEmpty, $"Task {task.Number} is in the shared queue.");
    }

    /// <summary>Judges whether a worker may look for work: AU034, AU035.</summary>
    public void CheckFree(WorkerLife worker)
    {
        if (worker.Current is not { } current)
            return;
        if (!current.IsWaiting)
        {
            state.Report(
                AuditRules.OneThingAtATime,
                $"Worker {worker.Number} looks for work while its current task {current.Number} can go on.");
        }
        else if (state.Options.Waits)
        {
            state.Report(
                AuditRules.WaitMeansWait,
                $"Worker {worker.Number} looks for work, but its task {current.Number} waits at a join, and so must "
                + $"it.");
        }
    }

    private static string Named(int task) =>
        task < 0 ? "nothing" : string.Create(CultureInfo.InvariantCulture, $"task {task}");

    private static bool HoldsAwaited(WorkerLife worker, WorkerLife victim) =>
        worker.Current is { IsWaiting: true } waiting && waiting.Children().Any(child => child.Holder == victim);

    private int SeenAt(WorkerLife victim) => victim.Deque.At(state.Options.ThiefTakesNewest)?.Number ?? -1;

    private bool HasVictims(WorkerLife worker)
    {
        if (state.Options.HasDeques)
            return true;
        state.Report(AuditRules.QueueExists,
            $"Worker {worker.Number} looks at a victim, but no worker has a deque in this run.");
        return false;
    }

    // What follows a probe agrees with it: AU046, AU047. A steal may stand alone, since a runtime need not record its
    // probes.
    private void CheckProbed(WorkerLife worker, int task)
    {
        TraceEvent item = state.Event;
        if (!worker.HasProbed)
        {
            if (item.Kind != EventKind.Steal)
                state.Report(AuditRules.StealFollowsProbe,
                    $"No probe came before this {EventWords.WordOf(item.Kind)}.");
            return;
        }

        if (worker.Probe.Other != item.Other)
        {
            state.Report(
                AuditRules.StealFollowsProbe,
                $"Worker {worker.Number} has just looked at worker {worker.Probe.Other}, not at worker {item.Other}.");
        }
        else if (worker.Probe.Task != task)
        {
            state.Report(
                item.Kind == EventKind.Empty ? AuditRules.EmptyIsEmpty : AuditRules.StealFollowsProbe,
                $"Worker {worker.Number} has just seen {Named(worker.Probe.Task)} there, not {Named(task)}.");
        }
    }

    private void StealMore(WorkerLife worker, WorkerLife victim)
    {
        if (worker.StealLeft <= 0)
        {
            state.Report(
                AuditRules.Amount,
                $"The steal moves more than {(state.Options.TakesHalf ? "half of the deque" : "one task")}.");
        }

        worker.StealLeft--;
        if (TakenFrom(victim.Deque, state.Options.ThiefTakesNewest) is { } task)
            worker.Deque.Put(task);
    }

    private void CheckSpacing(WorkerLife victim)
    {
        long least = state.Options.Cost("steal");
        long time = state.Event.Time;
        if (victim.LastStolenTime >= 0
            && (Int128)time - victim.LastStolenTime + state.Options.Uncertainty < least)
        {
            state.Report(
                AuditRules.StealSpacing,
                $"Worker {victim.Number} was stolen from at time {victim.LastStolenTime}, less than {least} before.");
        }

        victim.LastStolenTime = time;
    }

    // What leaves a queue; null when a task that is not queued cannot have been taken: AU041, AU042.
    private TaskLife? TakenFrom(TaskQueue queue, bool isBottom)
    {
        TaskLife? task = state.Live(state.Event.Task);
        if (task is null || task.Queue != queue)
        {
            state.Report(
                AuditRules.QueueHolds,
                $"Task {state.Event.Task} is not in "
                + $"{queue.Name}{(task?.Queue is { } other ? $" but in {other.Name}" : "")}.");
            if (task is null || (task.HasBegun && task.Queue is null))
                return null;
        }
        else if (queue.At(isBottom) is { } atEnd && atEnd != task)
        {
            state.Report(
                AuditRules.PermittedEnd,
                $"Task {task.Number} is not at the {(isBottom ? "bottom" : "top")} of {queue.Name}; task "
                + $"{atEnd.Number} is.");
        }

        task.Queue?.Remove(task);
        return task;
    }

    private static void GoOnWith(WorkerLife worker, TaskLife? task)
    {
        worker.Hand = task;
        if (task is { HasBegun: true })
            worker.Push(task);
    }
}
