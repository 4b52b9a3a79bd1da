using Rookery.Traces.Tests.Files;

namespace Rookery.Traces.Tests.Auditing;

public sealed class AuditInPortionsTests
{
    [Theory]
    [MemberData(nameof(AuditSamples.Lawful), MemberType = typeof(AuditSamples))]
    [MemberData(nameof(AuditSamples.Broken), MemberType = typeof(AuditSamples))]
    public void Report_AfterPortionsOfAnySize_IsThatOfTheWhole(string name)
    {
        Trace trace = TraceSample.Read(name);
        AuditReport whole = Audit.Of(trace);
        for (int size = 1; size <= 7; size += 3)
        {
            var audit = new AuditInPortions(trace);
            while (!audit.Advance(size))
                Assert.InRange(audit.Done, 1, trace.Count - 1);
            AuditReport report = audit.Report();
            Assert.Equal(whole.Findings, report.Findings);
            Assert.Equal(whole.CountsByRule, report.CountsByRule);
            Assert.Equal(whole.Laws, report.Laws);
            Assert.Equal((whole.Work, whole.Span, whole.Makespan), (report.Work, report.Span, report.Makespan));
        }
    }

    [Fact]
    public void Report_BeforeTheEnd_IsRefused()
    {
        var audit = new AuditInPortions(TraceSample.Read(AuditSamples.Lawful.First().Data));
        audit.Advance(1);
        Assert.Throws<InvalidOperationException>(audit.Report);
        Assert.Throws<ArgumentOutOfRangeException>(() => audit.Advance(-1));
    }
}
