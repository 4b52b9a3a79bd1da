using System.Text.RegularExpressions;
using Rookery.Testing;
using Rookery.Traces.Tests.Files;

namespace Rookery.Traces.Tests.Auditing;

public sealed class AuditTests
{
    [Theory]
    [MemberData(nameof(AuditSamples.Lawful), MemberType = typeof(AuditSamples))]
    public void Of_LawfulSample_FindsNothing(string name)
    {
        AuditReport report = Audit.Of(TraceSample.Read(name));
        Assert.Empty(report.Findings);
        Assert.True(report.IsLawful);
        Assert.Equal(0, report.FindingCount);
    }

    [Theory]
    [MemberData(nameof(AuditSamples.Broken), MemberType = typeof(AuditSamples))]
    public void Of_BrokenSample_FindsThatRuleAndNoOther(string name)
    {
        AuditReport report = Audit.Of(TraceSample.Read(name));
        string[] expected =
        [
            TraceSample.Note(name, "broken-rule"),
            .. TraceSample.Note(name, "broken-also").Split(' ', StringSplitOptions.RemoveEmptyEntries),
        ];
        Assert.Equal(
            expected.Order(StringComparer.Ordinal),
            report.CountsByRule.Select(c => c.Key.Code).Order(StringComparer.Ordinal));
        Assert.All(report.Findings, f => Assert.EndsWith(".", f.What, StringComparison.Ordinal));
        Assert.Equal(report.FindingCount, report.CountsByRule.Sum(c => c.Value));
    }

    [Fact]
    public void Rules_All_HaveASampleAndAChapterInTheDocs()
    {
        string docs = File.ReadAllText(RepositoryFile.At("docs/audit.md"));
        foreach (AuditRule rule in AuditRules.All)
        {
            Assert.Contains($"Broken/{rule.Code}.csv", TraceSample.In("Broken"));
            Assert.Contains($"### {rule.Code} {rule.Name}\n\n{rule.Statement}\n", docs, StringComparison.Ordinal);
        }

        Assert.Equal(AuditRules.All.Length, AuditRules.All.Select(r => r.Code).Distinct().Count());
        Assert.Equal(AuditRules.All.Length, Regex.Count(docs, "^### AU[0-9]{3} ", RegexOptions.Multiline));
    }

    [Fact]
    public void Docs_ExamplesOfFindings_AreWhatTheAuditSays()
    {
        string docs = File.ReadAllText(RepositoryFile.At("docs/audit.md"));
        foreach (string name in TraceSample.In("Broken"))
        {
            AuditFinding finding = Audit.Of(TraceSample.Read(name)).Findings
                .First(f => f.Rule.Code == TraceSample.Note(name, "broken-rule"));
            Assert.Contains($"> {finding.What}\n", docs, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Of_Sample_AddsUpWorkSpanAndMakespan()
    {
        // Lawful/steal.csv by hand: task 1 works 4, task 2 works 3, task 0 works 1 after both: T1 = 8, Tinf = 4 + 1 =
        // 5.
        AuditReport report = Audit.Of(TraceSample.Read("Lawful/steal.csv"));
        Assert.Equal(((Int128)8, 5L, 6L, 3), (report.Work, report.Span, report.Makespan, report.Tasks));
        Assert.Equal(
            [LawVerdict.Holds, LawVerdict.Holds, LawVerdict.NotApplicable], report.Laws.Select(l => l.Verdict));
        Assert.Equal(((Int128)8, (Int128)12), (report.Laws[0].Left, report.Laws[0].Right));
    }

    [Fact]
    public void Of_GreedySample_ChecksTheGreedyBound()
    {
        // Lawful/greedy.csv by hand: T1 = 3 + 3 + 2 + 1 = 9, Tinf = 3 + 1 = 4, Tp = 6: 2 * 6 is at most 9 + 4.
        AuditLaw law = Audit.Of(TraceSample.Read("Lawful/greedy.csv")).Laws[2];
        Assert.Equal((LawVerdict.Holds, (Int128)12, (Int128)13), (law.Verdict, law.Left, law.Right));
    }

    [Fact]
    public void Of_EmptyTrace_FindsThatNothingBegins()
    {
        AuditReport report = Audit.Of(new TraceRecorder().Build(new TraceInputs(), TextLabels.None));
        Assert.Equal(["AU016"], report.CountsByRule.Select(c => c.Key.Code));
    }

    [Fact]
    public void Of_ManyFindings_ListsTheFirstAndCountsAll()
    {
        var recorder = new TraceRecorder();
        for (int i = 0; i < 500; i++)
            recorder.Add(new TraceEvent(i, EventKind.Empty, 0, -1, -1, 0));
        Trace trace = recorder.Build(new TraceInputs(), TextLabels.None);
        AuditReport report = Audit.Of(trace, 7);
        Assert.Equal(7, report.Findings.Length);
        Assert.Equal(500, report.CountsByRule.Single(c => c.Key.Code == "AU040").Value);
        Assert.Empty(Audit.Of(trace, 0).Findings);
        Assert.Throws<ArgumentOutOfRangeException>(() => Audit.Of(trace, -1));
    }

    [Fact]
    public void Of_ClockUncertainty_LoosensTimesBetweenWorkers()
    {
        string text = TraceSample.Text("Broken/AU071.csv");
        Assert.False(Audit.Of(TraceSample.Parse(text)).IsLawful);
        Assert.True(Audit.Of(TraceSample.Parse("# clock-uncertainty: 8\n" + text)).IsLawful);
    }

    [Fact]
    public void Of_AnyEvents_NeverFails() =>
        TraceBytes.Any.Sample(trace => Audit.Of(trace).FindingCount >= 0, iter: 3_000);

    [Fact]
    public void Of_SampleWithOneRowChanged_NeverFails()
    {
        // Every field of every row of every sample, set to a few other values.
        foreach (string name in TraceSample.In("Lawful"))
        {
            Trace trace = TraceSample.Read(name);
            for (int step = 0; step < trace.Count; step++)
            {
                foreach (TraceEvent changed in Changes(trace[step]))
                    Assert.True(Audit.Of(With(trace, step, changed)).FindingCount >= 0);
            }
        }
    }

    private static IEnumerable<TraceEvent> Changes(TraceEvent e)
    {
        foreach (EventKind kind in Enum.GetValues<EventKind>())
            yield return new(e.Time, kind, e.Worker, e.Task, e.Other, e.Line);
        foreach (int number in (int[])[-1, 0, 1, 2, 3, 99])
        {
            yield return new(e.Time, e.Kind, e.Worker, number, e.Other, e.Line);
            yield return new(e.Time, e.Kind, e.Worker, e.Task, number, e.Line);
            yield return new(e.Time, e.Kind, Math.Max(0, number), e.Task, e.Other, e.Line);
            yield return new(number, e.Kind, e.Worker, e.Task, e.Other, e.Line);
        }
    }

    private static Trace With(Trace trace, int step, TraceEvent changed)
    {
        var recorder = new TraceRecorder();
        for (int i = 0; i < trace.Count; i++)
            recorder.Add(i == step ? changed : trace[i]);
        return recorder.Build(trace.Inputs, trace.Labels);
    }
}
