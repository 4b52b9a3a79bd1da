using System.Collections.Immutable;
using Rookery.Programs;
using Rookery.Traces.Measuring;

namespace Rookery.Reports;

/// <summary>Work and span of a program in words and numbers.</summary>
internal static class AnalysisReport
{
    /// <summary>Says it.</summary>
    public static Report Of(string program, Analysis analysis)
    {
        var parallelism = new Ratio(analysis.Work, analysis.Span);
        string gain = parallelism.HasValue
            ? $"So no number of workers can be more than {Say.Decimal(parallelism, 2)} times faster than one."
            : "Nothing in it takes any time.";
        return new(
            [
                $"{program} has {Say.Time(analysis.Work, "units")} of work in {Say.Count(analysis.Tasks, "task")}.",
                $"The longest chain that has to be done piece after piece is {Say.Time(analysis.Span, "units")}.",
                gain,
            ],
            [
                new(
                    ["measure", "value", "what it says"],
                    [
                        Row("work T1", Say.Whole(analysis.Work), "units of computing, all tasks together"),
                        Row(
                            "span Tinf", Say.Whole(analysis.Span),
                            "longest chain that has to be done piece after piece"),
                        Row("parallelism", Say.Decimal(parallelism, 2), "T1 / Tinf: the most that workers can gain"),
                        Row("tasks", Say.Whole(analysis.Tasks), $"of them {Say.Whole(analysis.Forks)} forked"),
                        Row("deepest", Say.Whole(analysis.Deepest), "most tasks inside one another, the first is 1"),
                    ],
                    [1]),
            ]);
    }

    private static ImmutableArray<ReportCell> Row(string name, string value, string meaning) =>
        [name, value, ReportCell.Quiet(meaning)];
}
