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

    // Where the pool's own code goes on from note to note they share a look at the clock. Wherever a program's code ran
    // in between, it has to be seen: eight pieces, and for the reduction seven combinings, each of 0.2 ms.
    [Theory]
    [InlineData(false, 8)]
    [InlineData(true, 15)]
    public void Recording_OfALoop_SeesEachPieceByItself(bool isReduction, int pieces)
    {
        using var pool = new WorkerPool(new PoolOptions { Workers = 1, RecordingCapacity = 1 << 10 });
        var separate = new List<int>();
        for (int round = 0; round < 6; round++)
        {
            _ = isReduction ? pool.Run<int, int>(Reduced, 8) : pool.Run<int, int>(Looped, 8);
            Trace trace = RecordedTraces.Audited(pool.TakeRecording());
            separate.Add(Enumerable.Range(1, trace.Count - 1)
                .Count(step => trace[step].Time - trace[step - 1].Time >= 180_000));
        }

        // A worker that loses its processor for a while adds one; a look that was not taken would merge two each time.
        Assert.Equal(pieces, separate.Min());
    }

    // What a caught exception leaves behind is a program's code again: 0.2 ms before the last fork have to be seen.
    [Fact]
    public void Recording_AfterAnExceptionInALoopIsCaught_LooksAgain()
    {
        using var pool = new WorkerPool(new PoolOptions { Workers = 1, RecordingCapacity = 1 << 10 });
        var before = new List<long>();
        for (int round = 0; round < 6; round++)
        {
            pool.Run<int, int>(Caught, 1);
            IReadOnlyList<RecordedEvent> events = pool.TakeRecording().Events;
            int last = Enumerable.Range(0, events.Count).Last(i => events[i].Kind == RecordedKind.Fork);
            int passed = Enumerable.Range(0, last).Last(i => events[i].Kind == RecordedKind.JoinPass);
            before.Add(events[last].Time - events[passed].Time);
        }

        Assert.All(before, time => Assert.True(time >= 180_000, $"{time} ns"));
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

    private static int Looped(Worker worker, int pieces)
    {
        worker.For(0, pieces, 0, (_, index) => Busy(index), 1);
        return 0;
    }

    private static int Reduced(Worker worker, int pieces) => worker.Reduce(
        0, pieces, 0, (_, index) => Busy(index), (left, right) => Busy(left + right), 0, 1);

    private static int Caught(Worker worker, int value)
    {
        try
        {
            worker.For(0, 2, 0, (_, index) => ArgumentOutOfRangeException.ThrowIfZero(index), 1);
        }
        catch (ArgumentOutOfRangeException)
        {
            Busy(value);
        }

        return worker.Join(worker.Fork(static (Worker _, int given) => given, value));
    }

    private static int Busy(int value)
    {
        long start = System.Diagnostics.Stopwatch.GetTimestamp();
        while (System.Diagnostics.Stopwatch.GetElapsedTime(start).TotalMicroseconds < 200)
            Thread.SpinWait(10);
        return value;
    }

    // It runs the awaited child itself, which in a trace a waiting worker must not.
    [Fact]
    public void Recording_WhereJoinsWait_IsRefused() => Assert.Throws<ArgumentException>(() =>
        new WorkerPool(new PoolOptions { AtJoin = AtJoin.Wait, RecordingCapacity = 1 }));
}
