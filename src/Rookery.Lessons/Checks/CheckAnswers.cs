using System.Collections.Immutable;
using System.Globalization;
using Rookery.Checking;
using Rookery.Checking.Words;
using Rookery.Lessons.Blocks;

namespace Rookery.Lessons.Checks;

/// <summary>All answers of a block, and what they come to.</summary>
/// <param name="All">They, scenario by scenario, within each model by model.</param>
/// <param name="Spec">What was asked.</param>
internal sealed record CheckAnswers(ImmutableArray<CheckAnswer> All, CheckSpec Spec)
{
    /// <summary>What helps when a search has too many states.</summary>
    public const string Shrink = "Shrink the scenario: fewer threads first, then fewer operations a thread, then "
        + "smaller arrays; or ask for fewer models at once.";

    /// <summary>The first search that ended without an answer; null when all have one.</summary>
    public CheckAnswer? OutOfBudget => All.FirstOrDefault(one => one.Result.Verdict == Verdict.OutOfBudget);

    /// <summary>The answer in a word or two.</summary>
    public string Answer => Common(All) is { } verdict ? verdict switch
    {
        Verdict.Holds => "Holds.",
        Verdict.Broken => "Broken.",
        Verdict.Allowed => "Allowed.",
        Verdict.Forbidden => "Forbidden.",
        Verdict.OutOfBudget => "No answer.",
    } : All.Select(one => one.Label).Distinct().Count() == 1 ? "It depends on the memory." : "Answers differ.";

    /// <summary>How far a search came.</summary>
    public string StoppedAt(CheckAnswer stopped)
    {
        CheckResult result = stopped.Result;
        string limit = result.Exhausted switch
        {
            Budget.States => string.Create(
                CultureInfo.InvariantCulture, $"the limit of {Spec.StatesMax:N0} states (field 'states')"),
            Budget.Memory => string.Create(
                CultureInfo.InvariantCulture, $"the limit of {LessonLimits.StateBytesMax >> 20} MiB of states"),
            Budget.Writes => "more waiting writes than are kept (the field 'buffer' bounds them)",
            Budget.Time or null => "a limit",
        };
        return string.Create(
            CultureInfo.InvariantCulture,
            $"The search of {stopped.Label} under {CheckWords.WordOf(result.Memory)} reached {limit} at depth ")
            + string.Create(
                CultureInfo.InvariantCulture,
                $"{result.Depth}, with {result.Frontier:N0} states to go on from.");
    }

    /// <summary>The answer in a sentence or some.</summary>
    /// <param name="shown">The answer whose execution is shown; null for none.</param>
    public string Sentence(CheckAnswer? shown)
    {
        string stopped = OutOfBudget is { } one ? $"{StoppedAt(one)} {Shrink}" : "";
        if (shown is null)
        {
            return stopped.Length > 0 ? stopped : Common(All) switch
            {
                Verdict.Holds => "In every execution all that is expected holds.",
                Verdict.Forbidden => "No execution ends as asked.",
                Verdict.Broken or Verdict.Allowed or Verdict.OutOfBudget or null => "",
            };
        }

        CheckResult result = shown.Result;
        string model = All.Length == 1 && Spec.Models.Length == 1
            ? "" : $" ({shown.Label}, {CheckWords.WordOf(result.Memory)})";
        string what = result.Property is { } property ? $"{Capitalised(CheckWords.NameOf(property))}{model}: "
            : model.Length > 0 ? $"Shown below{model}: " : "";
        return $"{what}{CheckerWords.English.Why(result.Witness!.Finding!)} {stopped}".TrimEnd();
    }

    /// <summary>Numbers for formulas.</summary>
    public IEnumerable<MeasureValue> Measures()
    {
        foreach (MeasureValue one in Of("", All))
            yield return one;
        foreach (MemoryModel model in Spec.Models)
        {
            string prefix = CheckWords.WordOf(model) + ".";
            foreach (MeasureValue one in Of(prefix, [.. All.Where(one => one.Result.Memory == model)]))
                yield return one;
        }
    }

    /// <summary>The verdict that all of them share; null when they differ.</summary>
    public static Verdict? Common(IEnumerable<CheckAnswer> answers)
    {
        Verdict[] found = [.. answers.Select(one => one.Result.Verdict).Distinct()];
        return found.Length == 1 ? found[0] : null;
    }

    private static IEnumerable<MeasureValue> Of(string prefix, ImmutableArray<CheckAnswer> answers)
    {
        if (Common(answers) is { } verdict)
            yield return CheckWords.Of(prefix + "verdict", verdict);
        yield return Number(prefix + "states", answers.Sum(one => one.Result.States));
        yield return Number(prefix + "transitions", answers.Sum(one => one.Result.Transitions));
        foreach (Verdict each in Enum.GetValues<Verdict>())
        {
            yield return Number(
                $"{prefix}count.{CheckWords.Of("", each).Word}", answers.Count(one => one.Result.Verdict == each));
        }

        if (answers.Length != 1)
            yield break;
        CheckResult result = answers[0].Result;
        yield return Number(prefix + "outcomes", result.Outcomes.Length);
        yield return Number(prefix + "depth", result.Depth);
        yield return result.Witness is { } witness
            ? Number(prefix + "steps", witness.Steps.Length) : new(prefix + "steps", "0", "0");
        foreach (OperationProgress progress in result.Progress)
            yield return CheckWords.Of($"{prefix}progress.{progress.Operation}", progress.Class);
    }

    private static MeasureValue Number(string name, long value) =>
        new(name, value.ToString(CultureInfo.InvariantCulture), "1");

    private static string Capitalised(string word) => char.ToUpperInvariant(word[0]) + word[1..];
}
