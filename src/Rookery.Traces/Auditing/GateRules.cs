namespace Rookery.Traces.Auditing;

/// <summary>Rules about what a worker may do next, by what it did last.</summary>
internal sealed class GateRules(AuditState state)
{
    /// <summary>Judges whether the event may follow: AU017, AU024, AU032, AU036, AU037, AU038.</summary>
    public void Check(WorkerLife worker)
    {
        TraceEvent item = state.Event;
        if (worker.HasStopped)
        {
            state.Report(AuditRules.StopIsLast, $"Worker {worker.Number} had stopped after the run's end.");
            worker.HasStopped = false;
        }

        CheckSleep(worker, item);
        CheckBlock(worker, item);
        if (item.Kind == EventKind.Stop)
            return;
        if (worker.MustBegin is { } child && (item.Kind != EventKind.Begin || item.Task != child.Number))
        {
            state.Report(AuditRules.BeginsNext, $"Task {child.Number} had to begin next on worker {worker.Number}.");
            worker.MustBegin = null;
        }

        if (worker.MustPass is { } parent && (item.Kind != EventKind.JoinPass || item.Task != parent.Number))
        {
            state.Report(
                AuditRules.LastEnderResumes,
                $"Worker {worker.Number} ended the last child of suspended task {parent.Number} and had to go on "
                + $"with it.");
            worker.MustPass = null;
        }

        CheckHand(worker, item);
    }

    private void CheckSleep(WorkerLife worker, in TraceEvent item)
    {
        if (worker.IsAsleep && item.Kind is not (EventKind.Wake or EventKind.Stop))
            state.Report(AuditRules.SleeperSleeps, $"Worker {worker.Number} has slept since step {worker.LastStep}.");
        if (!worker.IsAsleep && item.Kind == EventKind.Wake)
            state.Report(AuditRules.SleeperSleeps, $"Worker {worker.Number} wakes but did not sleep.");
        worker.IsAsleep &= item.Kind == EventKind.Stop;
    }

    private void CheckBlock(WorkerLife worker, in TraceEvent item)
    {
        bool isUnblock = item.Kind == EventKind.Unblock;
        if (worker.IsBlocked && !isUnblock)
            state.Report(AuditRules.BlockedWaits,
                $"Worker {worker.Number} has been blocked since step {worker.LastStep}.");
        if (!worker.IsBlocked && isUnblock)
            state.Report(AuditRules.BlockedWaits, $"Task {item.Task} unblocks but was not blocked here.");
        worker.IsBlocked = false;
    }

    private void CheckHand(WorkerLife worker, in TraceEvent item)
    {
        if (worker.Hand is not { } hand)
            return;
        bool isRestOfSteal = item.Kind == EventKind.Steal && worker.Last.Kind == EventKind.Steal
            && item.Time == worker.Last.Time && item.Other == worker.Last.Other;
        if (isRestOfSteal)
            return;

        // A begin is judged by the rules for begins, which say more.
        if (item.Kind == EventKind.Begin)
            return;
        if (item.Task != hand.Number || !hand.HasBegun || !Acts(item.Kind))
        {
            state.Report(
                AuditRules.GoesOnWithTaken,
                $"Worker {worker.Number} took task {hand.Number} and had to go on with it.");
        }

        worker.Hand = null;
    }

    private static bool Acts(EventKind kind) => kind
        is EventKind.Work or EventKind.Fork or EventKind.Call or EventKind.JoinWait or EventKind.JoinPass
        or EventKind.Block or EventKind.End;
}
