namespace Rookery.Traces.Auditing;

/// <summary>Rules about workers that sleep, wake and stop.</summary>
internal sealed class RestRules(AuditState state, QueueRules queues)
{
    /// <summary>Judges going to sleep: AU034, AU052.</summary>
    public void Sleep(WorkerLife worker)
    {
        worker.IsAsleep = true;
        bool waitsAtJoin = worker.Current is { IsWaiting: true } && (state.Options.Waits || state.Options.HasThreads);
        if (waitsAtJoin)
            return;
        queues.CheckFree(worker);
        if (!state.Options.IdleSleeps)
            state.Report(AuditRules.Patience,
                $"Worker {worker.Number} sleeps, but idle workers do not sleep in this run.");
        else if (state.Options.HasDeques && state.Options.HasAllLooks && worker.FailedProbes < state.Options.Patience)
        {
            state.Report(
                AuditRules.Patience,
                $"Worker {worker.Number} sleeps after {worker.FailedProbes} failed probes in a row; its patience is "
                + $"{state.Options.Patience}.");
        }
    }

    /// <summary>Judges leaving a core: AU030.</summary>
    public void Stop(WorkerLife worker)
    {
        int task = state.Event.Task;
        if (task >= 0 && worker.Current?.Number != task)
        {
            state.Report(
                AuditRules.CurrentTaskActs,
                $"Worker {worker.Number} stops with task {task}, which is not its current task.");
        }

        worker.HasStopped = state.RootHasEnded;
    }
}
