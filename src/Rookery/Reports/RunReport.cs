using System.Collections.Immutable;
using Rookery.Simulation;
using Rookery.Traces;
using Rookery.Traces.Measuring;

namespace Rookery.Reports;

/// <summary>One run in words and numbers: what a lecturer reads aloud, then every measure, then the laws.</summary>
internal static class RunReport
{
    /// <summary>Says what became of a run.</summary>
    /// <param name="run">The run.</param>
    /// <param name="labels">What its tasks are called, for a run that starved.</param>
    public static Report Of(RunResult run, ITaskLabels labels)
    {
        ImmutableArray<string> sentences = run.Starvation is { } starvation
            ? StarvationText.Of(starvation, run.Inputs.TimeUnit, labels)
            : Sentences(run.Measures, run.Inputs);
        return new(sentences, [MeasuresOf(run.Measures, run.Inputs), LawTable.Of(run.Measures, run.Inputs)]);
    }

    private static ImmutableArray<string> Sentences(Measures run, TraceInputs inputs)
    {
        string unit = inputs.TimeUnit;
        var said = ImmutableArray.CreateBuilder<string>();
        said.Add($"{Say.Sentence(Say.CountInWords(inputs.Workers, "worker"))} ran {inputs.Program} in "
            + $"{Say.Time(run.Makespan, unit)}{Faster(run)}.");
        said.Add($"There were {Say.Time(run.Work, unit)} of work in {Say.Count(run.Tasks, "task")}, and "
            + $"{Say.Percent(run.Utilisation)} of the time of all cores went into it.");
        if (run.Span > 0)
        {
            said.Add("The longest chain of work that has to be done piece after piece is "
                + $"{Say.Time(run.Span, unit)}, so no number of workers can be more than "
                + $"{Say.Decimal(run.Parallelism, 1)} times faster than one.");
        }

        said.AddRange(StealSentences(run, inputs));
        if (run.IdleWhileTasksWaited > 0)
        {
            said.Add($"Workers looked for work or slept for {Say.Time(run.IdleWhileTasksWaited, unit)} in all while a "
                + "task waited in some queue.");
        }

        return said.ToImmutable();
    }

    private static string Faster(Measures run)
    {
        if (!run.SpeedUp.HasValue || run.Work == 0)
            return "";
        double factor = run.SpeedUp.ToDouble();
        return factor >= 1
            ? $": {Say.Decimal(factor, 2)} times as fast as one worker that has nothing to do but the work"
            : $": {Say.Decimal(1 / factor, 2)} times slower than one worker that has nothing to do but the work";
    }

    private static IEnumerable<string> StealSentences(Measures run, TraceInputs inputs)
    {
        if (inputs.Option("queues", "per-worker") != "per-worker" || inputs.Workers == 1)
            yield break;
        if (run.Steals == 0)
        {
            yield return "Nothing was stolen.";
            yield break;
        }

        Ratio forksPerSteal = new(run.Forks, run.Steals);
        yield return $"There were {Say.CountInWords(run.Steals, "steal")}, one for every "
            + $"{Say.Decimal(forksPerSteal, 1)} forks, and a stolen task held "
            + $"{Say.Time(run.StolenWorkMean, inputs.TimeUnit)} of work on average.";
        yield return $"Thieves looked {Say.Count(run.Probes, "time")}, saw nothing "
            + $"{Say.Count(run.EmptyProbes, "time")}, and {Say.CountInWords(run.LostRaces, "race")} "
            + $"{(run.LostRaces == 1 ? "was" : "were")} lost.";
    }

    private static ReportTable MeasuresOf(Measures run, TraceInputs inputs) => Table(
        run, inputs.TimeUnit,

        // Of a program that was not done the longest chain is not known.
        inputs.Starved ? "–" : Say.Time(run.Span, inputs.TimeUnit),
        inputs.Starved ? "–" : Say.Decimal(run.Parallelism, 2));

    private static ReportTable Table(Measures run, string unit, string span, string parallelism) => new(
        ["measure", "value", "what it says"],
        [
            Row("makespan Tp", Say.Time(run.Makespan, unit), "when the run was over"),
            Row("work T1", Say.Time(run.Work, unit), "time spent computing, all workers together"),
            Row("span Tinf", span, "longest chain that has to be done piece after piece"),
            Row("parallelism", parallelism, "T1 / Tinf: the most that workers can gain"),
            Row("speed-up", Say.Decimal(run.SpeedUp, 2), "T1 / Tp"),
            Row("utilisation", Say.Percent(run.Utilisation), "share of the cores' time that was work"),
            Row("tasks", Say.Whole(run.Tasks), $"of them {Say.Whole(run.Forks)} forked"),
            Row("steals", Say.Whole(run.Steals), $"moved {Say.Count(run.StolenTasks, "task")}"),
            Row("probes", Say.Whole(run.Probes), $"looks at a victim; {Say.Whole(run.EmptyProbes)} saw nothing"),
            Row("lost races", Say.Whole(run.LostRaces), "seen, but gone when the hand was there"),
            Row("stolen work, mean", Say.Time(run.StolenWorkMean, unit), "work in a stolen task, with all below it"),
            Row("stolen work, median", Say.Time(run.StolenWorkMedian, unit), ""),
            Row("stolen work, largest", Say.Time(run.StolenWorkMax, unit), ""),
            Row("stolen work, share", Say.Percent(run.StolenWorkShare), "of all work; above 100 % when steals nest"),
            Row("stolen depth, mean", Say.Decimal(run.StolenDepthMean, 2), "the start task has depth 0"),
            Row("deepest deque", Say.Whole(run.DeepestDeque), "most tasks that one queue held"),
            Row("stack depth", Say.Whole(run.StackDepth), "most tasks on one worker's stack"),
            Row("live tasks", Say.Whole(run.LiveTasks), "most tasks made and not ended: the space"),
            Row("deviations", Say.Whole(run.Deviations), "strands out of the one-worker order"),
            Row(
                "sleeps, wakes", $"{Say.Whole(run.Sleeps)}, {Say.Whole(run.Wakes)}",
                $"asleep for {Say.Time(run.TimeAsleep, unit)}"),
            Row("idle while tasks waited", Say.Time(run.IdleWhileTasksWaited, unit), "all workers together"),
            Row("events", Say.Whole(run.Events), "rows of the trace"),
        ],
        [1]);

    private static ImmutableArray<ReportCell> Row(string name, string value, string meaning) =>
        [name, value, ReportCell.Quiet(meaning)];
}
