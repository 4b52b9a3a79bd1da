using System.Collections.Immutable;
using System.Globalization;
using System.Numerics;
using Rookery.Lessons.Blocks;
using Rookery.Traces.Measuring;

namespace Rookery.Lessons.Exhibits;

/// <summary>The measures of a run by the names that formulas use: those of docs/json.md.</summary>
internal static class MeasureTable
{
    private static readonly ImmutableArray<(string Name, string Meaning, Func<Measures, Ratio> Of)> Rows =
    [
        ("makespan", "Tp: when the run was over", run => Whole(run.Makespan)),
        ("work", "T1: time spent computing, all workers together", run => Whole(run.Work)),
        ("span", "Tinf: longest chain that has to be done piece after piece", run => Whole(run.Span)),
        ("parallelism", "T1 / Tinf: the most that workers can gain", run => run.Parallelism),
        ("speedup", "T1 / Tp", run => run.SpeedUp),
        ("utilisation", "share of the cores' time that was work", run => run.Utilisation),
        ("workers", "workers", run => Whole(run.Workers)),
        ("cores", "cores", run => Whole(run.Cores)),
        ("tasks", "tasks: started, forked and called", run => Whole(run.Tasks)),
        ("forks", "forks", run => Whole(run.Forks)),
        ("steals", "successful steals", run => Whole(run.Steals)),
        ("stolenTasks", "tasks that steals moved", run => Whole(run.StolenTasks)),
        ("probes", "looks at a victim", run => Whole(run.Probes)),
        ("emptyProbes", "looks that saw nothing", run => Whole(run.EmptyProbes)),
        ("lostRaces", "seen, but gone when the hand was there", run => Whole(run.LostRaces)),
        ("lostRacesPerSteal", "lost races for each steal", run => run.LostRacesPerSteal),
        ("stolenWork.mean", "work in a stolen task, with all below it: the mean", run => run.StolenWorkMean),
        ("stolenWork.median", "the same: the median", run => run.StolenWorkMedian),
        ("stolenWork.max", "the same: the largest", run => Whole(run.StolenWorkMax)),
        ("stolenWork.share", "the same: all together, as a share of the work", run => run.StolenWorkShare),
        ("stolenDepth.mean", "depth of stolen tasks; the start task has 0", run => run.StolenDepthMean),
        ("deepestDeque", "most tasks that one queue held", run => Whole(run.DeepestDeque)),
        ("stackDepth", "most tasks on one worker's stack", run => Whole(run.StackDepth)),
        ("liveTasks", "most tasks made and not ended: the space", run => Whole(run.LiveTasks)),
        ("deepest", "S1: deepest nesting of tasks", run => Whole(run.Deepest)),
        ("sleeps", "times that a worker went to sleep", run => Whole(run.Sleeps)),
        ("wakes", "times that a worker was woken", run => Whole(run.Wakes)),
        ("timeAsleep", "time asleep, all workers together", run => Whole(run.TimeAsleep)),
        ("idleWhileTasksWaited", "time idle while some queue held a task", run => Whole(run.IdleWhileTasksWaited)),
        ("deviations", "strands out of the one-worker order", run => Whole(run.Deviations)),
        ("bounds.work", "T1 / P: no run is shorter", run => new(run.Work, run.Cores)),
        ("bounds.span", "Tinf: no run is shorter", run => Whole(run.Span)),
        ("bounds.greedy", "(T1 - Tinf) / P + Tinf: no greedy run is longer", Greedy),
        ("events", "events of the run", run => Whole(run.Events)),
    ];

    private static readonly ImmutableHashSet<string> OfStolenRuns =
        ["stolenWork.mean", "stolenWork.median", "stolenDepth.mean"];

    /// <summary>All names.</summary>
    public static ImmutableArray<string> Names { get; } =
        [.. Rows.Select(row => row.Name), "finished", "starved"];

    /// <summary>The values of a run. What is not known of a starved run has no value.</summary>
    public static ImmutableArray<MeasureValue> Of(Measures run, bool isStarved) =>
    [
        .. Rows.Select(row => Value(row.Name, IsKnown(row.Name, run, isStarved) ? row.Of(run) : default)),
        Value("finished", Whole(isStarved ? 0 : 1)),
        Value("starved", Whole(isStarved ? 1 : 0)),
    ];

    /// <summary>The values as a table for a page.</summary>
    public static BlockTable TableOf(Measures run, bool isStarved, string unit) => new(
        "Measures of this run" + (unit == "units" ? "" : $" (times in {unit})"), ["measure", "value", "what it says"],
        [
            .. Rows.Select(row => ImmutableArray.Create(
                row.Name, TextOf(IsKnown(row.Name, run, isStarved) ? row.Of(run) : default), row.Meaning)),
        ],
        [1]);

    /// <summary>(T1 - Tinf)/P + Tinf as one exact ratio.</summary>
    public static Ratio Greedy(Measures run) =>
        new((Int128)run.Work + ((Int128)(run.Cores - 1) * run.Span), run.Cores);

    /// <summary>A ratio as a table shows it.</summary>
    public static string TextOf(Ratio value)
    {
        if (!value.HasValue)
            return "\u2013";
        var exact = Formulas.Exact.Of((BigInteger)value.Numerator, (BigInteger)value.Denominator);
        return exact.ToText(exact.IsWhole ? 0 : 2);
    }

    private static bool IsKnown(string name, Measures run, bool isStarved) =>
        isStarved
            ? name is not ("span" or "parallelism" or "bounds.span" or "bounds.greedy")
            : !OfStolenRuns.Contains(name) || run.Steals > 0;

    private static MeasureValue Value(string name, Ratio value) => new(
        name, value.Numerator.ToString(CultureInfo.InvariantCulture),
        value.HasValue ? value.Denominator.ToString(CultureInfo.InvariantCulture) : "0");

    private static Ratio Whole(Int128 value) => new(value, 1);
}
