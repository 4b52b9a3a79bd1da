using Rookery.Traces.Files;

namespace Rookery.Traces.Auditing;

/// <summary>Rules about the form of events: their times, and what they name.</summary>
internal sealed class ShapeRules(AuditState state)
{
    private long _latest;

    /// <summary>Judges the event's time: AU001.</summary>
    public void CheckTime(WorkerLife worker)
    {
        long time = state.Event.Time;
        if (time < 0)
            state.Report(AuditRules.TimeOrder, $"Time {time} is below 0.");
        else if (worker.LastStep >= 0 && time < worker.Last.Time)
            state.Report(AuditRules.TimeOrder,
                $"Worker {worker.Number} goes back from time {worker.Last.Time} to {time}.");
        else if (time < _latest && _latest - time > state.Options.Uncertainty)
            state.Report(AuditRules.TimeOrder, $"Time goes back from {_latest} to {time}.");
        _latest = Math.Max(_latest, time);
    }

    /// <summary>
    /// Judges what the event names: AU002 and AU003. An event of the wrong form is judged no further.
    /// </summary>
    public bool CheckFields()
    {
        TraceEvent item = state.Event;
        (Want task, Want other) = WantedBy(item.Kind);
        bool isGood = CheckField(task, item.Task, "task") && CheckField(other, item.Other, "other");
        if (item.Other == item.Worker
            && item.Kind is EventKind.Probe or EventKind.Steal or EventKind.Empty or EventKind.Wake)
        {
            state.Report(AuditRules.Fields,
                $"Worker {item.Worker} names itself as the other party of {EventWords.WordOf(item.Kind)}.");
            isGood = false;
        }

        if (item.Task == item.Other && item.Task >= 0
            && item.Kind is EventKind.Begin or EventKind.End or EventKind.Fork or EventKind.Call or EventKind.JoinWait)
        {
            state.Report(AuditRules.Fields,
                $"Task {item.Task} names itself as the other party of {EventWords.WordOf(item.Kind)}.");
            isGood = false;
        }

        CheckWorker(item.Worker);
        if (other is Want.Worker or Want.WorkerOrNone && item.Other >= 0)
            CheckWorker(item.Other);
        return isGood;
    }

    private enum Want
    {
        None,
        Task,
        TaskOrNone,
        Worker,
        WorkerOrNone,
    }

    private static (Want Task, Want Other) WantedBy(EventKind kind) => kind switch
    {
        EventKind.Begin or EventKind.End => (Want.Task, Want.TaskOrNone),
        EventKind.Fork or EventKind.Call or EventKind.JoinWait => (Want.Task, Want.Task),
        EventKind.Work or EventKind.JoinPass or EventKind.Block or EventKind.Unblock or EventKind.Take =>
            (Want.Task, Want.None),
        EventKind.Probe => (Want.TaskOrNone, Want.Worker),
        EventKind.Steal or EventKind.LostRace => (Want.Task, Want.Worker),
        EventKind.Empty or EventKind.Wake => (Want.None, Want.WorkerOrNone),
        EventKind.Sleep => (Want.None, Want.None),
        EventKind.Stop => (Want.TaskOrNone, Want.None),
    };

    private bool CheckField(Want want, int value, string field)
    {
        bool isGood = want switch
        {
            Want.None => value == -1,
            Want.Task or Want.Worker => value >= 0,
            Want.TaskOrNone or Want.WorkerOrNone => value >= -1,
        };
        if (isGood)
            return true;
        state.Report(
            AuditRules.Fields,
            $"The {field} of this {EventWords.WordOf(state.Event.Kind)} is {value}; it must be "
            + $"{(want == Want.None ? "-1, none" : want is Want.Task or Want.Worker ? "0 or more" : "-1 or more")}.");
        return false;
    }

    private void CheckWorker(int worker)
    {
        if (worker >= state.Options.Workers && !state.Options.HasThreads)
        {
            state.Report(
                AuditRules.WorkerNumbers,
                $"There is a worker {worker}, but the run has only {state.Options.Workers}, numbered from 0.");
        }
    }
}
