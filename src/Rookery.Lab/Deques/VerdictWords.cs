using System.Collections.Immutable;
using Rookery.Checking;
using Rookery.Lab.Shell;
using Rookery.Lab.Texts;

namespace Rookery.Lab.Deques;

/// <summary>Says verdicts in the reader's language.</summary>
internal sealed class VerdictWords(LabTexts texts)
{
    private const int QuotedMax = 60;

    /// <summary>The verdict in a sentence.</summary>
    public string Sentence(CheckedText found)
    {
        CheckResult result = found.Result;
        return result.Verdict switch
        {
            Verdict.Holds => texts.Of("deque.says.Holds", Numbers.Whole(result.States)),
            Verdict.Broken => texts.Of(
                "deque.says.Broken", texts["deque.property." + result.Property], result.Witness?.Steps.Length ?? 0),
            Verdict.Allowed => texts.Of("deque.says.Allowed", result.Witness?.Steps.Length ?? 0),
            Verdict.Forbidden => texts.Of("deque.says.Forbidden", Numbers.Whole(result.States)),
            Verdict.OutOfBudget => texts.Of("deque.says.OutOfBudget", texts["deque.budget." + result.Exhausted]),
        };
    }

    /// <summary>What the text that was checked has been changed to.</summary>
    /// <param name="text">The text that was checked.</param>
    /// <param name="opened">The text as it was opened.</param>
    public string Change(string text, string opened) => TextChange.Between(opened, text) switch
    {
        null => texts["deque.change.none"],
        { After.Length: 0 } change => texts.Of("deque.change.out", change.FirstLine, Quoted(change.Before)),
        { Before.Length: 0 } change => texts.Of("deque.change.in", change.FirstLine, Quoted(change.After)),
        var change => texts.Of("deque.change.for", change.FirstLine, Quoted(change.After), Quoted(change.Before)),
    };

    /// <summary>How large the check was.</summary>
    public string Size(CheckedText found) => texts.Of(
        "deque.numbers", Numbers.Whole(found.Result.States), Numbers.Whole(found.Result.Transitions),
        Numbers.Whole(found.Result.Depth), Numbers.Whole(found.Result.Outcomes.Length),
        Numbers.Decimal(found.Seconds, 2, texts));

    private static string Quoted(ImmutableArray<string> lines)
    {
        string all = string.Join(" / ", lines.Select(line => line.Trim()));
        return all.Length <= QuotedMax ? all : all[..QuotedMax] + "…";
    }
}
