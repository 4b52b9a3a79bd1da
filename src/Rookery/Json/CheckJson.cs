using System.Collections.Immutable;
using System.Text.Json;
using Rookery.Checking;
using Rookery.Checking.Witnesses;
using Rookery.Checking.Words;
using Rookery.CommandLine;
using Rookery.Commands;
using Rookery.Reports;

namespace Rookery.Json;

/// <summary>What <c>check --json</c> prints: one object, or an array of them.</summary>
internal static class CheckJson
{
    /// <summary>The text.</summary>
    /// <param name="found">The answers.</param>
    /// <param name="listsOutcomes">Whether all outcomes are listed.</param>
    public static string Of(ImmutableArray<CheckedScenario> found, bool listsOutcomes)
    {
        if (found.Length == 1)
            return JsonText.Of(json => WriteOne(json, found[0], listsOutcomes));
        return JsonText.ArrayOf(json =>
        {
            foreach (CheckedScenario one in found)
            {
                json.WriteStartObject();
                json.WriteString("file", one.Path);
                WriteOne(json, one, listsOutcomes);
                json.WriteEndObject();
            }
        });
    }

    private static void WriteOne(Utf8JsonWriter json, CheckedScenario found, bool listsOutcomes)
    {
        CheckResult result = found.Result;
        json.WriteString("algorithm", result.Algorithm);
        json.WriteString("scenario", result.Scenario);
        json.WriteString("memory", CheckLimits.WordOf(result.Memory));
        json.WriteString("verdict", CheckText.WordOf(result.Verdict));
        json.WriteNumber("states", result.States);
        json.WriteNumber("transitions", result.Transitions);
        json.WriteNumber("outcomes", result.Outcomes.Length);
        json.WriteNumber("seconds", Math.Round(found.Seconds, 3));
        json.WriteStartArray("witness");
        foreach (WitnessStep step in result.Witness?.Steps ?? [])
            WriteStep(json, result.Witness!, step);
        json.WriteEndArray();
        json.WriteStartObject("progress");
        foreach (OperationProgress progress in result.Progress)
            json.WriteString(progress.Operation, CheckText.WordOf(progress.Class));
        json.WriteEndObject();
        if (result.Property is { } property)
            json.WriteString("property", WordOf(property));
        if (result.Witness?.Finding is { } finding)
            json.WriteString("why", CheckerWords.English.Why(finding));
        if (!listsOutcomes)
            return;
        json.WriteStartArray("outcomeList");
        foreach (Outcome outcome in result.Outcomes)
            json.WriteStringValue(outcome.Text);
        json.WriteEndArray();
    }

    private static void WriteStep(Utf8JsonWriter json, Witness witness, WitnessStep step)
    {
        json.WriteStartObject();
        json.WriteString("thread", witness.Threads[step.Thread]);
        json.WriteBoolean("memory", step.IsMemory);
        json.WriteNumber("line", step.Line);
        json.WriteString("what", CheckerWords.English.Sentence(step));
        json.WriteEndObject();
    }

    private static string WordOf(Property property) => property switch
    {
        Property.NothingLost => "lost",
        Property.NothingTwice => "twice",
        Property.Linearizable => "linearizable",
        Property.Assertions => "assert",
        Property.Bounds => "bounds",
        Property.Computation => "computation",
        Property.Locking => "locking",
        Property.NoDeadlock => "deadlock",
    };
}
