using System.Text;
using Rookery.Pool.Tests.Programs;
using Rookery.Traces;

namespace Rookery.Pool.Tests.Recording;

public sealed class RecordingTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(4)]
    public void Recording_OfForksAndCalls_PassesTheAudit(int workers)
    {
        for (int round = 0; round < 20; round++)
        {
            using var pool = new WorkerPool(new PoolOptions { Workers = workers, RecordingCapacity = 1 << 16 });
            Assert.Equal(610, pool.Run<Fibonacci, long>(new(15)));
            Audited(pool, 610);
        }
    }

    private static void Audited(WorkerPool pool, long seed)
    {
        using var text = new StringWriter();
        var recorded = pool.TakeRecording();
        recorded.WriteCsv(text, "fib");
        using var stream = new MemoryStream(Encoding.UTF8.GetBytes(text.ToString()));
        Trace trace = TraceCsv.Read(stream);
        AuditReport report = Audit.Of(trace, 10);
        Assert.True(report.IsLawful, string.Join('\n', report.Findings.Select(f => f.ToString()))
            + $"\n{recorded.ShiftMax} {recorded.LooksLeftOut} {seed}\n");
    }
}
