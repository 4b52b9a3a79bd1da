using System.Collections.Immutable;

namespace Rookery.Traces.Measuring;

/// <summary>All measures by name, in the order of docs/measures.md; the names are those of docs/json.md.</summary>
public static class MeasureNames
{
    /// <summary>All of them.</summary>
    public static ImmutableArray<NamedMeasure> All { get; } =
    [
        new("makespan", "Tp: when the run was over", true, run => Whole(run.Makespan)),
        new("work", "T1: time spent computing, all workers together", true, run => Whole(run.Work)),
        new("span", "Tinf: longest chain that has to be done piece after piece", true, run => Whole(run.Span)),
        new("parallelism", "T1 / Tinf: the most that workers can gain", false, run => run.Parallelism),
        new("speedup", "T1 / Tp", false, run => run.SpeedUp),
        new("utilisation", "share of the cores' time that was work", false, run => run.Utilisation),
        new("workers", "workers", false, run => Whole(run.Workers)),
        new("cores", "cores", false, run => Whole(run.Cores)),
        new("tasks", "tasks: started, forked and called", false, run => Whole(run.Tasks)),
        new("forks", "forks", false, run => Whole(run.Forks)),
        new("steals", "successful steals", false, run => Whole(run.Steals)),
        new("stolenTasks", "tasks that steals moved", false, run => Whole(run.StolenTasks)),
        new("probes", "looks at a victim", false, run => Whole(run.Probes)),
        new("emptyProbes", "looks that saw nothing", false, run => Whole(run.EmptyProbes)),
        new("lostRaces", "seen, but gone when the hand was there", false, run => Whole(run.LostRaces)),
        new("lostRacesPerSteal", "lost races for each steal", false, run => run.LostRacesPerSteal),
        new("stolenWork.mean", "work in a stolen task, with all below it: the mean", true, run => run.StolenWorkMean),
        new("stolenWork.median", "the same: the median", true, run => OfSteals(run, run.StolenWorkMedian)),
        new("stolenWork.max", "the same: the largest", true, run => Whole(run.StolenWorkMax)),
        new("stolenWork.share", "the same: all together, as a share of the work", false, run => run.StolenWorkShare),
        new("stolenDepth.mean", "depth of stolen tasks; the start task has 0", false, run => run.StolenDepthMean),
        new("deepestDeque", "most tasks that one queue held", false, run => Whole(run.DeepestDeque)),
        new("stackDepth", "most tasks on one worker's stack", false, run => Whole(run.StackDepth)),
        new("liveTasks", "most tasks made and not ended: the space", false, run => Whole(run.LiveTasks)),
        new("deepest", "S1: deepest nesting of tasks", false, run => Whole(run.Deepest)),
        new("sleeps", "times that a worker went to sleep", false, run => Whole(run.Sleeps)),
        new("wakes", "times that a worker was woken", false, run => Whole(run.Wakes)),
        new("timeAsleep", "time asleep, all workers together", true, run => Whole(run.TimeAsleep)),
        new("idleWhileTasksWaited", "time idle while some queue held a task", true,
        run => Whole(run.IdleWhileTasksWaited)),
        new("deviations", "strands out of the one-worker order", false, run => Whole(run.Deviations)),
        new("bounds.work", "T1 / P: no run is shorter", true, run => new(run.Work, run.Cores)),
        new("bounds.span", "Tinf: no run is shorter", true, run => Whole(run.Span)),
        new("bounds.greedy", "(T1 - Tinf) / P + Tinf: no greedy run is longer", true, run => run.GreedyBound),
        new("events", "events of the run", false, run => Whole(run.Events)),
    ];

    /// <summary>The measure of that name; null when there is none.</summary>
    public static NamedMeasure? Find(string name) => All.FirstOrDefault(measure => measure.Name == name);

    /// <summary>Whether a measure is known only of a run that came to its end.</summary>
    public static bool NeedsTheEnd(string name) =>
        name is "span" or "parallelism" or "bounds.span" or "bounds.greedy" or "makespan" or "speedup" or "utilisation";

    private static Ratio OfSteals(Measures run, Ratio value) => run.StolenTasks > 0 ? value : default;

    private static Ratio Whole(Int128 value) => new(value, 1);
}
