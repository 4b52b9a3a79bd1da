using Rookery.Traces.Files;

namespace Rookery.Traces.Auditing;

/// <summary>Rules about how runs end.</summary>
internal sealed class EndRules(AuditState state)
{
    private readonly FindingList _findings = state.Findings;
    private TaskLife? _anyQueued;

    /// <summary>Judges the state after the last event: AU015, AU016, AU038, AU048, AU061.</summary>
    public void Check()
    {
        if (state.Options.Starved)
            CheckStarved();
        else
            CheckFinished();
    }

    private void CheckFinished()
    {
        if (state.BegunCount == 0)
            _findings.Add(AuditRules.OneRoot, -1, -1, -1, $"No task begins.");
        foreach (TaskLife task in state.LiveTasks)
        {
            if (task.Queue is { } queue)
                _findings.Add(
                    AuditRules.QueuesEndEmpty, -1, -1, task.Number,
                    $"Task {task.Number} is left in {queue.Name}.");
            else
                _findings.Add(
                    AuditRules.AllEnd, -1, -1, task.Number,
                    $"Task {task.Number} {(task.HasBegun ? "has not ended" : "has not begun")}.");
        }

        foreach (WorkerLife worker in state.Workers)
        {
            if (worker.LastStep >= 0 && worker.Last.Kind != EventKind.Stop)
                _findings.Add(
                    AuditRules.StopIsLast, -1, worker.Number, -1,
                    $"The last event of worker {worker.Number} is {EventWords.WordOf(worker.Last.Kind)}.");
        }
    }

    private void CheckStarved()
    {
        bool isAllDone = true;
        foreach (TaskLife task in state.LiveTasks)
        {
            isAllDone = false;
            bool isOnTop = task.IsSuspended || task.On?.Current == task;
            if (task.IsWaiting && task.ChildrenLeft == 0 && isOnTop)
                _findings.Add(
                    AuditRules.StarvedIsStuck, -1, -1, task.Number,
                    $"Task {task.Number} could pass its join: its children have ended.");
            else if (!task.HasBegun && state.Options.HasThreads)
                _findings.Add(
                    AuditRules.StarvedIsStuck, -1, -1, task.Number,
                    $"Task {task.Number} could begin: it has a thread of its own.");
        }

        if (isAllDone)
            _findings.Add(AuditRules.StarvedIsStuck, -1, -1, -1, $"The run starved, but every task has ended.");
        foreach (WorkerLife worker in state.Workers)
            CheckStuck(worker);
    }

    // A sleeper could take what is queued, but it does not look, and nobody is left to wake it.
    private void CheckStuck(WorkerLife worker)
    {
        if (worker.MustBegin is { } next)
            _findings.Add(
                    AuditRules.StarvedIsStuck, -1, worker.Number, next.Number,
                    $"Worker {worker.Number} could begin task {next.Number}.");
        else if (worker.Hand is { } hand)
            _findings.Add(
                    AuditRules.StarvedIsStuck, -1, worker.Number, hand.Number,
                    $"Worker {worker.Number} could go on with task {hand.Number}.");
        else if (worker.Current is { IsWaiting: false } current)
            _findings.Add(
                    AuditRules.StarvedIsStuck, -1, worker.Number, current.Number,
                    $"Worker {worker.Number} could go on with task {current.Number}.");
        else if (!worker.IsAsleep && Takeable(worker) is { } task)
            _findings.Add(
                    AuditRules.StarvedIsStuck, -1, worker.Number, task.Number,
                    $"Worker {worker.Number} could take task {task.Number}.");
    }

    // A task that the worker is free to take; null when there is none.
    private TaskLife? Takeable(WorkerLife worker)
    {
        TaskLife? waiting = worker.Current;
        if (waiting is not null && state.Options.Waits)
            return null;
        if (state.Options.HasSharedQueue)
            return state.SharedQueue.At(state.Options.OwnerTakesNewest);
        if (waiting is not null && state.Options.Leapfrogs)
        {
            TaskLife? atEnd = worker.Deque.At(state.Options.OwnerTakesNewest);
            return waiting.Children().FirstOrDefault(child => child == atEnd);
        }

        return _anyQueued ??= state.LiveTasks.FirstOrDefault(t => t.Queue is not null);
    }

}
