namespace Rookery.Traces.Replaying;

/// <summary>Running totals at every so many steps; between them events are counted.</summary>
/// <remarks>One record of 88 bytes for each 512 events.</remarks>
internal sealed class CountIndex
{
    private const int Interval = 512;

    private readonly Trace _trace;
    private readonly List<RunCounts> _kept = [default];

    private CountIndex(Trace trace) => _trace = trace;

    /// <summary>An index that is not ready before all its <see cref="Parts"/> are done.</summary>
    public static CountIndex Begun(Trace trace) => new(trace);

    /// <summary>All the work in parts, each with about how many events it was worth.</summary>
    public IEnumerable<int> Parts()
    {
        for (int step = Interval; step <= _trace.Count; step += Interval)
        {
            _kept.Add(Plus(_kept[^1], step - Interval, step));
            yield return Interval;
        }
    }

    /// <summary>The totals of the first <paramref name="step"/> events, without the work.</summary>
    public RunCounts At(int step) => Plus(_kept[step / Interval], step / Interval * Interval, step);

    private RunCounts Plus(RunCounts sum, int from, int to)
    {
        Span<long> kinds = stackalloc long[(int)EventKind.Stop + 1];
        long further = 0;
        for (int step = from; step < to; step++)
        {
            EventKind kind = _trace[step].Kind;
            kinds[(int)kind]++;
            if (kind == EventKind.Steal && StagePlayer.IsFurtherOfSteal(_trace, step))
                further++;

            // An empty shared queue has no victim: nobody was looked at.
            if (kind == EventKind.Empty && _trace[step].Other < 0)
                kinds[(int)EventKind.Empty]--;
        }

        return sum with
        {
            TasksBegun = sum.TasksBegun + kinds[(int)EventKind.Begin],
            TasksEnded = sum.TasksEnded + kinds[(int)EventKind.End],
            Forks = sum.Forks + kinds[(int)EventKind.Fork],
            Steals = sum.Steals + kinds[(int)EventKind.Steal] - further,
            StolenTasks = sum.StolenTasks + kinds[(int)EventKind.Steal],
            Probes = sum.Probes + kinds[(int)EventKind.Probe],
            EmptyProbes = sum.EmptyProbes + kinds[(int)EventKind.Empty],
            LostRaces = sum.LostRaces + kinds[(int)EventKind.LostRace],
            Sleeps = sum.Sleeps + kinds[(int)EventKind.Sleep],
            Wakes = sum.Wakes + kinds[(int)EventKind.Wake],
        };
    }
}
