using System.Text;
using Rookery.Pool.Recording;
using Rookery.Traces;

namespace Rookery.Pool.Tests.Recording;

/// <summary>Recordings as others read them: written as CSV, read as a trace, and judged.</summary>
internal static class RecordedTraces
{
    /// <summary>The trace of a recording, which has to be lawful.</summary>
    public static Trace Audited(Recorded recorded)
    {
        using var text = new StringWriter();
        recorded.WriteCsv(text, "fib");
        using var stream = new MemoryStream(Encoding.UTF8.GetBytes(text.ToString()));
        Trace trace = TraceCsv.Read(stream);
        AuditReport report = Audit.Of(trace, 10);
        Assert.True(report.IsLawful, string.Join('\n', report.Findings.Select(f => f.ToString()))
            + $"\nshift {recorded.ShiftMax}, left out {recorded.LooksLeftOut}\n");
        return trace;
    }
}
