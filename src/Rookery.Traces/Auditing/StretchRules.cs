using Rookery.Traces.Files;

namespace Rookery.Traces.Auditing;

/// <summary>
/// Rules about the stretches between events: what they cost, and how many use a core. Adds up work and span.
/// </summary>
internal sealed class StretchRules(AuditState state)
{
    private long _now;
    private int _using;
    private bool _isOver;

    /// <summary>Sum of all stretches of work.</summary>
    public Int128 Work { get; private set; }

    /// <summary>Sum of all stretches in which a task waits for something outside the processor.</summary>
    public Int128 Blocked { get; private set; }

    /// <summary>Closes the stretch that the worker's last event opened, and opens the next: AU050, AU060.</summary>
    public void Close(WorkerLife worker)
    {
        TraceEvent item = state.Event;
        bool used = worker.LastStep >= 0 && UsesCore(worker.Last.Kind);
        CountCores(item.Time, (UsesCore(item.Kind) ? 1 : 0) - (used ? 1 : 0));
        if (worker.LastStep < 0)
            return;
        TraceEvent last = worker.Last;
        long length = item.Time > last.Time ? item.Time - Math.Max(0, last.Time) : 0;
        if (last.Kind is EventKind.Work or EventKind.Block)
        {
            if (last.Kind == EventKind.Work)
                Work += length;
            else
                Blocked += length;
            if (state.Live(last.Task) is { } task)
                task.Path = task.Path > long.MaxValue - length ? long.MaxValue : task.Path + length;
        }

        CheckCost(worker, length);
        worker.LengthBefore = last.Kind == EventKind.Stop ? long.MaxValue : length;
    }

    private static bool UsesCore(EventKind kind) => kind is not (EventKind.Block or EventKind.Sleep or EventKind.Stop);

    private void CheckCost(WorkerLife worker, long length)
    {
        // A preempted stretch goes on after the stop, and how much was paid before is not in the trace.
        TraceEvent last = worker.Last;
        if (state.Event.Kind == EventKind.Stop)
            return;
        if (last.Kind == EventKind.Steal && state.Event.Kind == EventKind.Steal && state.Event.Time == last.Time)
            return;
        string? name = last.Kind switch
        {
            EventKind.Fork => "fork",
            EventKind.Take => "take",
            EventKind.Probe => "probe",
            EventKind.Steal => "steal",
            EventKind.LostRace => "lost-race",
            EventKind.Sleep => "wake",
            _ => null,
        };

        // An owner may pay for a take before it takes effect, while it looks, or after, while it moves the task.
        Int128 paid = last.Kind == EventKind.Take ? (Int128)length + worker.LengthBefore : length;
        if (name is null || paid >= state.Options.Cost(name))
            return;
        state.Report(
            AuditRules.Cost,
            $"The {EventWords.WordOf(last.Kind)} of step {worker.LastStep} lasts {paid}; the machine's {name} costs "
            + $"{state.Options.Cost(name)}.");
    }

    // Recorded clocks cannot show who had a core when, and a recorded trace does not see the operating system take one
    // away.
    private void CountCores(long time, int change)
    {
        if (time > _now)
        {
            bool isOver = _using > state.Options.Cores && state.Options.Uncertainty == 0;
            if (isOver && !_isOver)
            {
                state.Findings.Add(
                    AuditRules.CoreCount, state.Step - 1, -1, -1,
                    $"From time {_now} to {time} {_using} workers use a core, but there are {state.Options.Cores}.");
            }

            _isOver = isOver;
            _now = time;
        }

        _using += change;
    }
}
