using System.Text.Json;
using Rookery.Traces;

namespace Rookery.Json;

/// <summary>What <c>audit --json</c> prints.</summary>
internal static class AuditJson
{
    /// <summary>The object.</summary>
    /// <param name="name">The trace's file, as it was given.</param>
    /// <param name="report">What was found.</param>
    public static string Of(string name, AuditReport report) => JsonText.Of(json =>
    {
        json.WriteString("trace", name);
        json.WriteBoolean("lawful", report.IsLawful);
        json.WriteNumber("events", report.Events);
        json.WriteNumber("tasks", report.Tasks);
        json.WriteWhole("work", report.Work);
        json.WriteNumber("span", report.Span);
        json.WriteNumber("makespan", report.Makespan);
        json.WriteStartArray("laws");
        foreach (AuditLaw law in report.Laws)
            WriteLaw(json, law);
        json.WriteEndArray();
        json.WriteNumber("findingCount", report.FindingCount);
        json.WriteStartArray("findings");
        foreach (AuditFinding finding in report.Findings)
            WriteFinding(json, finding);
        json.WriteEndArray();
    });

    private static void WriteLaw(Utf8JsonWriter json, AuditLaw law)
    {
        json.WriteStartObject();
        json.WriteString("law", law.Formula);
        json.WriteString("verdict", law.Verdict switch
        {
            LawVerdict.Holds => "holds",
            LawVerdict.Broken => "broken",
            LawVerdict.NotApplicable => "not-applicable",
        });
        json.WriteWhole("left", law.Left);
        json.WriteWhole("right", law.Right);
        json.WriteString("why", law.Why);
        json.WriteEndObject();
    }

    private static void WriteFinding(Utf8JsonWriter json, AuditFinding finding)
    {
        json.WriteStartObject();
        json.WriteNumber("step", finding.Step);
        json.WriteNumber("worker", finding.Worker);
        json.WriteNumber("task", finding.Task);
        json.WriteString("rule", finding.Rule.Code);
        json.WriteString("what", finding.What);
        json.WriteEndObject();
    }
}
