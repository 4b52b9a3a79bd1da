using Rookery.Pool.Recording;
using Rookery.Pool.Tests.Programs;
using Rookery.Traces;

namespace Rookery.Pool.Tests.Recording;

public sealed class RecordingTests
{
    public static TheoryData<string> Kinds => [.. PoolKinds.Names.Select(row => row.Data)
        .Where(name => PoolKinds.Options(name) is { Amount: StealAmount.One, AtJoin: not AtJoin.Wait })];

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
            RecordedTraces.Audited(pool.TakeRecording());
        }
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Recording_OnEachKindOfPool_PassesTheAudit(string kind)
    {
        using var pool = new WorkerPool(PoolKinds.Options(kind) with { RecordingCapacity = 1 << 16 });
        for (int round = 0; round < 5; round++)
        {
            Assert.Equal(610, pool.Run<Fibonacci, long>(new(15)));
            RecordedTraces.Audited(pool.TakeRecording());
        }
    }

    // Thieves that never rest, on deques with seldom more than one task: one run in some ten to a hundred has one that
    // came too late.
    [Fact]
    public void Recording_OfThievesThatNeverRest_HoldsRacesThatWereLost()
    {
        using var pool = new WorkerPool(new PoolOptions
        {
            Workers = 4,
            RecordingCapacity = 1 << 18,
            WhenIdle = WhenIdle.Spin,
            Fence = FencePlacement.Owner,
        });
        for (int round = 0; round < 5000; round++)
        {
            Assert.Equal(610, pool.Run<Fibonacci, long>(new(15)));
            Recorded recorded = pool.TakeRecording();
            if (!recorded.Events.Any(item => item.Kind == RecordedKind.LostRace))
                continue;
            Trace trace = RecordedTraces.Audited(recorded);
            Assert.Contains(Enumerable.Range(0, trace.Count), step => trace[step].Kind == EventKind.LostRace);
            TestContext.Current.TestOutputHelper?.WriteLine($"a lost race in run {round}");
            return;
        }

        Assert.Fail("No race was lost in 5000 runs.");
    }

    // It runs the awaited child itself, which in a trace a waiting worker must not.
    [Fact]
    public void Recording_WhereJoinsWait_IsRefused() => Assert.Throws<ArgumentException>(() =>
        new WorkerPool(new PoolOptions { AtJoin = AtJoin.Wait, RecordingCapacity = 1 }));
}
