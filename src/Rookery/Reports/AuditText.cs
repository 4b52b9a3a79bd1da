using System.Collections.Immutable;
using Rookery.Traces;

namespace Rookery.Reports;

/// <summary>What the audit found, in words and numbers.</summary>
internal static class AuditText
{
    /// <summary>Says it.</summary>
    /// <param name="name">The trace's file.</param>
    /// <param name="unit">Its unit of time.</param>
    /// <param name="report">What was found.</param>
    public static Report Of(string name, string unit, AuditReport report)
    {
        string extent = $"{Say.Count(report.Events, "event")} of {Say.Count(report.Tasks, "task")}";
        string verdict = report.IsLawful
            ? $"{name} is lawful: no rule is broken in {extent}."
            : $"{name} is not lawful: {Say.Count(report.FindingCount, "finding")} in {extent}.";
        string numbers = $"Work {Say.Time(report.Work, unit)}, span {Say.Time(report.Span, unit)}, makespan "
            + $"{Say.Time(report.Makespan, unit)}.";
        var said = ImmutableArray.Create(verdict, numbers);
        if (report.FindingCount > report.Findings.Length)
            said = said.Add($"The first {Say.Whole(report.Findings.Length)} are listed.");
        return new(said, [Laws(report), Rules(report), Findings(report)]);
    }

    private static ReportTable Laws(AuditReport report) => new(
        ["law", "this run", "", ""],
        [.. report.Laws.Select(law => ImmutableArray.Create<ReportCell>(
            law.Formula, $"{Say.Whole(law.Left)} ≤ {Say.Whole(law.Right)}", VerdictOf(law),
            ReportCell.Quiet(law.Why)))],
        []);

    private static ReportCell VerdictOf(AuditLaw law) => law.Verdict switch
    {
        LawVerdict.Holds => new("holds", Tone.Good),
        LawVerdict.Broken => new("broken", Tone.Bad),
        LawVerdict.NotApplicable => new("not promised", Tone.Quiet),
    };

    private static ReportTable Rules(AuditReport report) => new(
        ["rule", "broken", "what must hold"],
        [.. report.CountsByRule.Select(pair => ImmutableArray.Create<ReportCell>(
            pair.Key.ToString(), Say.Count(pair.Value, "time"), ReportCell.Quiet(pair.Key.Statement)))],
        []);

    private static ReportTable Findings(AuditReport report) => new(
        ["step", "worker", "task", "rule", "what was found"],
        [.. report.Findings.Select(finding => ImmutableArray.Create<ReportCell>(
            Number(finding.Step), Number(finding.Worker), Number(finding.Task), new(finding.Rule.Code, Tone.Bad),
            finding.What))],
        [0, 1, 2]);

    private static string Number(int value) => value < 0 ? "–" : Say.Whole(value);
}
