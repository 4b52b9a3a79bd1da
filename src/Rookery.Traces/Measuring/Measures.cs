namespace Rookery.Traces.Measuring;

/// <summary>The numbers of one run, each defined with its formula and source in docs/measures.md.</summary>
/// <remarks>All are exact. Times are in the trace's unit. Immutable.</remarks>
public sealed record Measures
{
    /// <summary>Tasks: the start task, forked and called ones.</summary>
    public long Tasks { get; init; }

    /// <summary>Forks.</summary>
    public long Forks { get; init; }

    /// <summary>Events in the trace.</summary>
    public long Events { get; init; }

    /// <summary>T1: the time that all workers together spent computing for tasks.</summary>
    public long Work { get; init; }

    /// <summary>
    /// Tinf: the longest chain of work and of waiting outside the processor that must follow one another.
    /// </summary>
    public long Span { get; init; }

    /// <summary>Tp: the time at which the run was over.</summary>
    public long Makespan { get; init; }

    /// <summary>P: the cores that the laws speak of.</summary>
    public int Cores { get; init; }

    /// <summary>Workers that appeared.</summary>
    public int Workers { get; init; }

    /// <summary>T1/Tinf: the most that any number of workers can gain.</summary>
    public Ratio Parallelism => new(Work, Span);

    /// <summary>T1/Tp.</summary>
    public Ratio SpeedUp => new(Work, Makespan);

    /// <summary>T1/(P·Tp): the share of the cores' time that was work.</summary>
    public Ratio Utilisation => new(Work, (Int128)Cores * Makespan);

    /// <summary>(T1 - Tinf)/P + Tinf: the most that a greedy schedule takes (exercise 27.1-3 of the textbook in
    /// docs/measures.md).</summary>
    public Ratio GreedyBound => new((Int128)Work + ((Int128)(Cores - 1) * Span), Cores);

    /// <summary>Successful steals; one may move several tasks.</summary>
    public long Steals { get; init; }

    /// <summary>Tasks and continuations moved by steals.</summary>
    public long StolenTasks { get; init; }

    /// <summary>Looks at a victim.</summary>
    public long Probes { get; init; }

    /// <summary>Looks that saw nothing.</summary>
    public long EmptyProbes { get; init; }

    /// <summary>Races lost, by thieves and by owners.</summary>
    public long LostRaces { get; init; }

    /// <summary>Lost races for each successful steal.</summary>
    public Ratio LostRacesPerSteal => new(LostRaces, Steals);

    /// <summary>Work in a stolen task, with all that it forked and called afterwards: the mean.</summary>
    public Ratio StolenWorkMean { get; init; }

    /// <summary>The same: the median.</summary>
    public Ratio StolenWorkMedian { get; init; }

    /// <summary>The same: the largest.</summary>
    public long StolenWorkMax { get; init; }

    /// <summary>
    /// Sum over stolen tasks of the work in them, over all work. Above 1 where stolen tasks lie within others.
    /// </summary>
    public Ratio StolenWorkShare { get; init; }

    /// <summary>Nesting depth of stolen tasks (the start task has 0): the mean.</summary>
    public Ratio StolenDepthMean { get; init; }

    /// <summary>The most tasks that one queue held.</summary>
    public long DeepestDeque { get; init; }

    /// <summary>The most tasks that lay on one worker's stack.</summary>
    public long StackDepth { get; init; }

    /// <summary>The most tasks that were forked or called and had not ended: the space.</summary>
    public long LiveTasks { get; init; }

    /// <summary>S1: the deepest nesting of tasks, counted in tasks; the space of one child-first worker.</summary>
    public long Deepest { get; init; }

    /// <summary>Times that a worker went to sleep.</summary>
    public long Sleeps { get; init; }

    /// <summary>Times that a worker was woken.</summary>
    public long Wakes { get; init; }

    /// <summary>Time asleep, over all workers.</summary>
    public long TimeAsleep { get; init; }

    /// <summary>Time that workers spent looking or asleep while some queue held a task, over all workers.</summary>
    public long IdleWhileTasksWaited { get; init; }

    /// <summary>
    /// Strands that did not follow, on their worker, the strand which precedes them in the one-worker order.
    /// </summary>
    public long Deviations { get; init; }

    /// <summary>The measures of a trace.</summary>
    public static Measures Of(Trace trace)
    {
        var measures = new MeasureAccumulator(trace.Inputs);
        for (int i = 0; i < trace.ChunkCount; i++)
        {
            foreach (ref readonly TraceEvent item in trace.Chunk(i))
                measures.Add(item);
        }

        return measures.Build(trace.Inputs);
    }
}
