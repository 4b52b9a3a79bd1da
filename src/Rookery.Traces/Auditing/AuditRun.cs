namespace Rookery.Traces.Auditing;

/// <summary>One pass over a trace: hands each event to the rules for its kind.</summary>
internal sealed class AuditRun
{
    private readonly AuditState _state;
    private readonly ShapeRules _shape;
    private readonly StretchRules _stretches;
    private readonly GateRules _gates;
    private readonly TaskRules _tasks;
    private readonly QueueRules _queues;
    private readonly RestRules _rests;

    public AuditRun(AuditState state)
    {
        _state = state;
        _shape = new ShapeRules(state);
        _stretches = new StretchRules(state);
        _gates = new GateRules(state);
        _tasks = new TaskRules(state);
        _queues = new QueueRules(state);
        _rests = new RestRules(state, _queues);
    }

    /// <summary>Judges the event that the state stands at.</summary>
    public void Judge()
    {
        WorkerLife worker = _state.Worker(_state.Event.Worker);
        _shape.CheckTime(worker);
        _stretches.Close(worker);
        if (_shape.CheckFields())
        {
            _gates.Check(worker);
            Follow(worker);
        }

        worker.Remember(_state.Step, _state.Event);
    }

    /// <summary>Judges the end, and sums up.</summary>
    public AuditReport Report(Trace trace)
    {
        new EndRules(_state).Check();
        long span = _state.SpanSoFar();
        long makespan = trace.Count == 0 ? 0 : Math.Max(0, trace[trace.Count - 1].Time - Math.Max(0, trace[0].Time));
        return new AuditReport
        {
            Laws = new LawRules(_state).Check(_stretches.Work, _stretches.Blocked, span, makespan, trace.Count == 0),
            Findings = _state.Findings.Listed(),
            FindingCount = _state.Findings.Count,
            CountsByRule = _state.Findings.Counts(),
            Events = trace.Count,
            Tasks = _state.BegunCount,
            Work = _stretches.Work,
            Span = span,
            Makespan = makespan,
        };
    }

    private void Follow(WorkerLife worker)
    {
        switch (_state.Event.Kind)
        {
            case EventKind.Begin: _tasks.Begin(worker); break;
            case EventKind.End: _tasks.End(worker); break;
            case EventKind.Work: _tasks.Work(worker); break;
            case EventKind.Fork: _tasks.Fork(worker); break;
            case EventKind.Call: _tasks.Call(worker); break;
            case EventKind.Take: _queues.Take(worker); break;
            case EventKind.Probe: _queues.Probe(worker); break;
            case EventKind.Steal: _queues.Steal(worker); break;
            case EventKind.LostRace: _queues.LostRace(worker); break;
            case EventKind.Empty: _queues.Empty(worker); break;
            case EventKind.JoinWait: _tasks.JoinWait(worker); break;
            case EventKind.JoinPass: _tasks.JoinPass(worker); break;
            case EventKind.Block: _tasks.Block(worker); break;
            case EventKind.Unblock: _tasks.Unblock(worker); break;
            case EventKind.Sleep: _rests.Sleep(worker); break;
            case EventKind.Wake: break;
            case EventKind.Stop: _rests.Stop(worker); break;
        }
    }
}
