using System.Globalization;
using Rookery.Checking;
using Rookery.Checking.Witnesses;
using Rookery.Checking.Words;
using Rookery.CommandLine;
using Rookery.Commands;
using Rookery.Terminal;

namespace Rookery.Reports;

/// <summary>Says what <c>check</c> has found.</summary>
internal static class CheckText
{
    private const int OutcomesMax = 1_000;

    /// <summary>Says one answer: the verdict, the numbers, the execution that shows it, progress, outcomes.</summary>
    public static void Write(AppConsole console, CheckedScenario found, bool listsOutcomes)
    {
        TextWriter output = console.Out;
        CheckResult result = found.Result;
        ReportWriter.WriteSentences(console, [Heading(found), Numbers(found)]);
        if (result.Witness is { } witness)
            WriteWitness(output, witness);
        if (result.Verdict == Verdict.OutOfBudget)
            ReportWriter.WriteSentences(console, [Advice(result)]);
        foreach (OperationProgress progress in result.Progress)
        {
            string why = CheckerWords.English.Why(progress.Reason);
            output.WriteLine($"  {progress.Operation}: {WordOf(progress.Class)}. {why}");
        }

        if (listsOutcomes)
        {
            output.WriteLine($"  outcomes:");
            foreach (Outcome outcome in result.Outcomes.Take(OutcomesMax))
                output.WriteLine($"    {(outcome.Text.Length == 0 ? "(no results)" : outcome.Text)}");
            if (result.Outcomes.Length > OutcomesMax)
                output.WriteLine($"    and {Say.Whole(result.Outcomes.Length - OutcomesMax)} more");
        }

        output.WriteLine();
    }

    /// <summary>How far a search has come, behind the number of states.</summary>
    public static string ProgressOf(SearchProgress now, double seconds)
    {
        string rate = seconds > 0 ? Say.Whole((long)(now.States / seconds)) : "-";
        return $"states ({rate} a second), {Say.Whole(now.Frontier)} to go on from at depth {now.Depth}, "
            + $"{Say.Whole(now.Bytes >> 20)} MiB";
    }

    /// <summary>The word of a verdict, as JSON has it.</summary>
    public static string WordOf(Verdict verdict) => verdict switch
    {
        Verdict.Holds => "holds",
        Verdict.Broken => "broken",
        Verdict.Allowed => "allowed",
        Verdict.Forbidden => "forbidden",
        Verdict.OutOfBudget => "out-of-budget",
    };

    /// <summary>The word of a class, as JSON has it.</summary>
    public static string WordOf(ProgressClass progress) => progress switch
    {
        ProgressClass.WaitFree => "wait-free",
        ProgressClass.LockFree => "lock-free",
        ProgressClass.ObstructionFree => "obstruction-free",
        ProgressClass.Blocking => "blocking",
        ProgressClass.Unknown => "unknown",
    };

    /// <summary>What fails, in words.</summary>
    public static string NameOf(Property property) => property switch
    {
        Property.NothingLost => "something is lost",
        Property.NothingTwice => "something is taken out twice",
        Property.Linearizable => "it is not linearizable",
        Property.Assertions => "an assertion fails",
        Property.Bounds => "an index leaves its array",
        Property.Computation => "a computation has no result",
        Property.Locking => "a lock is given back that is not held",
        Property.NoDeadlock => "the threads can stand still",
    };

    private static string Heading(CheckedScenario found)
    {
        CheckResult result = found.Result;
        string what = result.Verdict switch
        {
            Verdict.Holds => "holds in every execution",
            Verdict.Broken => $"is broken: {NameOf(result.Property!.Value)}",
            Verdict.Allowed => "can end as asked (allowed)",
            Verdict.Forbidden => "can never end as asked (forbidden)",
            Verdict.OutOfBudget => "has no answer yet (out of budget)",
        };
        return $"{result.Algorithm}, \"{result.Scenario}\", under {CheckLimits.WordOf(result.Memory)}: {what}.";
    }

    private static string Numbers(CheckedScenario found)
    {
        CheckResult result = found.Result;
        return $"{Say.Count(result.States, "state")}, {Say.Count(result.Transitions, "step")} between them, "
            + $"{Say.Count(result.Outcomes.Length, "outcome")}, {Say.Decimal(found.Seconds, 2)} s.";
    }

    private static string Advice(CheckResult result)
    {
        string limit = result.Exhausted switch
        {
            Budget.States => "The limit of states was reached (--limit-states)",
            Budget.Memory => "The limit of memory was reached (--limit-memory)",
            Budget.Time => "The limit of time was reached (--limit-seconds)",
            Budget.Writes or null => "More writes wait than are kept (--buffer bounds them)",
        };
        return $"{limit} at depth {result.Depth}, with {Say.Whole(result.Frontier)} states to go on from and "
            + $"{Say.Whole(result.Bytes >> 20)} MiB used. Shrink the scenario: fewer threads first, then fewer "
            + "operations a thread, then smaller arrays.";
    }

    private static void WriteWitness(TextWriter output, Witness witness)
    {
        int width = witness.Steps.Length.ToString(CultureInfo.InvariantCulture).Length;
        for (int step = 0; step < witness.Steps.Length; step++)
        {
            WitnessStep one = witness.Steps[step];
            string number = (step + 1).ToString(CultureInfo.InvariantCulture).PadLeft(width);
            string line = one.Line > 0 ? $"line {one.Line}" : "";
            output.WriteLine($"  {number}  {line,-8}  {CheckerWords.English.Sentence(one)}");
        }

        if (witness.Finding is { } finding)
            output.WriteLine($"  {CheckerWords.English.Why(finding)}");
    }
}
