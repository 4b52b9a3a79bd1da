using System.Collections.Immutable;
using System.Globalization;
using Rookery.Checking.Words;
using Rookery.Lessons.Blocks;

namespace Rookery.Lessons.Checks;

/// <summary>The tables of a check.</summary>
internal static class CheckTables
{
    private const int OutcomesMax = 64;

    /// <summary>Those that are asked for.</summary>
    public static IEnumerable<BlockTable> Of(CheckAnswers answers, CheckSpec spec)
    {
        if (spec.Show.Contains(CheckView.Verdicts))
            yield return Verdicts(answers, spec);
        if (spec.Show.Contains(CheckView.Outcomes))
        {
            foreach (IGrouping<string, CheckAnswer> one in answers.All.GroupBy(one => one.Label))
                yield return Outcomes(one.Key, [.. one]);
        }

        if (spec.Show.Contains(CheckView.Progress))
            yield return Progress(answers);
        if (spec.Show.Contains(CheckView.Numbers))
            yield return Numbers(answers);
    }

    private static BlockTable Verdicts(CheckAnswers answers, CheckSpec spec) => new(
        answers.All.All(one => one.Algorithm.IsLitmus)
            ? "Can the test end as it asks?" : "What holds in every execution, and what is broken",
        ["", .. spec.Models.Select(CheckWords.WordOf)],
        [
            .. answers.All.GroupBy(one => one.Label).Select(row => ImmutableArray.Create<string>(
                [row.Key, .. row.Select(CellOf)])),
        ],
        []);

    private static string CellOf(CheckAnswer answer)
    {
        string verdict = CheckWords.Spelt(answer.Result.Verdict);
        if (answer.Result.Witness is not { } witness)
            return verdict;
        int steps = witness.Steps.Length;
        return string.Create(
            CultureInfo.InvariantCulture, $"{verdict}, in {steps} step{(steps == 1 ? "" : "s")}");
    }

    private static BlockTable Outcomes(string label, ImmutableArray<CheckAnswer> answers)
    {
        ImmutableArray<string>[] found =
            [.. answers.Select(one => one.Result.Outcomes.Select(end => end.Text).ToImmutableArray())];
        string[] all = [.. found.SelectMany(one => one).Distinct().Order(StringComparer.Ordinal)];
        var rows = ImmutableArray.CreateBuilder<ImmutableArray<string>>();
        foreach (string end in all.Take(OutcomesMax))
        {
            IEnumerable<string> cells = found.Select(one => one.Contains(end) ? "yes" : "\u2013");
            rows.Add([end.Length == 0 ? "(no results)" : end, .. cells]);
        }

        if (all.Length > OutcomesMax)
        {
            FormattableString more = $"and {all.Length - OutcomesMax} more";
            rows.Add([more.ToString(CultureInfo.InvariantCulture), .. answers.Select(_ => "")]);
        }

        return new(
            $"How {label} can end", ["outcome", .. answers.Select(one => CheckWords.WordOf(one.Result.Memory))],
            rows.ToImmutable(), []);
    }

    private static BlockTable Progress(CheckAnswers answers) => new(
        "How far others can hold an operation up", ["", "memory", "operation", "progress", "why"],
        [
            .. answers.All.SelectMany(one => one.Result.Progress.Select(progress => ImmutableArray.Create(
                one.Label, CheckWords.WordOf(one.Result.Memory), progress.Operation, CheckWords.Spelt(progress.Class),
                CheckerWords.English.Why(progress.Reason)))),
        ],
        []);

    private static BlockTable Numbers(CheckAnswers answers) => new(
        "What was counted", ["", "memory", "states", "steps between them", "outcomes", "longest execution"],
        [
            .. answers.All.Select(one => ImmutableArray.Create(
                one.Label, CheckWords.WordOf(one.Result.Memory), Whole(one.Result.States),
                Whole(one.Result.Transitions), Whole(one.Result.Outcomes.Length), Whole(one.Result.Depth))),
        ],
        [2, 3, 4, 5]);

    private static string Whole(long value) => value.ToString("N0", CultureInfo.InvariantCulture);
}
