using Rookery.Pool.Tests.Programs;

namespace Rookery.Pool.Tests.Misuse;

/// <summary>Wrong use gives an error that says what was wrong, and the pool works on afterwards.</summary>
public sealed class PoolMisuseTests
{
    public static TheoryData<string> Pools => PoolKinds.Names;

    [Theory]
    [MemberData(nameof(Pools))]
    public void Join_OfAChildJoinedBefore_IsAnError(string kind) => Refused(
        kind, "joined before",
        static worker =>
        {
            var child = worker.Fork(Fibonacci.ByFunction, 3);
            worker.Join(child);
            worker.Join(child);
        });

    [Theory]
    [MemberData(nameof(Pools))]
    public void Join_OfNoChild_IsAnError(string kind) => Refused(
        kind, "given no child", static worker => worker.Join(default(Forked<Fibonacci, long>)));

    [Theory]
    [MemberData(nameof(Pools))]
    public void TaskEnd_WithAnUnjoinedChild_IsAnError(string kind) => Refused(
        kind, "never joined", static worker => worker.Fork(Fibonacci.ByFunction, 3));

    [Theory]
    [MemberData(nameof(Pools))]
    public void Join_OfAChildOfAnotherTask_IsAnError(string kind)
    {
        using var pool = new WorkerPool(PoolKinds.Options(kind));
        var stray = pool.Run(
            static (worker, _) =>
            {
                var child = worker.Fork(Fibonacci.ByFunction, 3);
                worker.Join(child);
                return child;
            },
            0);
        for (int i = 0; i < 20; i++)
            Assert.Throws<PoolMisuseException>(() => pool.Run(static (worker, child) => worker.Join(child), stray));
    }

    [Theory]
    [MemberData(nameof(Pools))]
    public void Join_InAnotherOrder_GivesEachItsOwnResult(string kind)
    {
        if (kind == "recording")
            return;
        using var pool = new WorkerPool(PoolKinds.Options(kind));
        for (int round = 0; round < 50; round++)
        {
            (long a, long b, long c) = pool.Run(
                static (worker, _) =>
                {
                    var first = worker.Fork(Fibonacci.ByFunction, 10);
                    var second = worker.Fork<Fibonacci, long>(new(11));
                    var third = worker.Fork(Fibonacci.ByFunction, 12);
                    long one = worker.Join(first);
                    long three = worker.Join(third);
                    return (one, worker.Join(second), three);
                },
                0);
            Assert.Equal((55, 89, 144), (a, b, c));
        }
    }

    [Fact]
    public void Dispose_ByATaskOfThePool_IsAnError()
    {
        using var pool = new WorkerPool(new PoolOptions { Workers = 2 });
        Assert.Throws<PoolMisuseException>(() => pool.Run(static (worker, _) => worker.Pool.Dispose(), 0));
        Assert.Equal(55, pool.Run(Fibonacci.ByFunction, 10));
    }

    [Fact]
    public void Run_AfterDispose_IsAnError()
    {
        var pool = new WorkerPool(new PoolOptions { Workers = 2 });
        pool.Dispose();
        pool.Dispose();
        Assert.Throws<ObjectDisposedException>(() => pool.Run(Fibonacci.ByFunction, 10));
    }

    // Each waits for a child that lies in the queue of all, behind which nobody may look: the classic starved pool.
    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    public void Join_WhereEveryWorkerWaits_SaysThatThePoolStarved(int workers)
    {
        using var pool = new WorkerPool(
            new PoolOptions { Workers = workers, Queues = Queues.Shared, AtJoin = AtJoin.Wait });
        var starved = Assert.Throws<PoolStarvedException>(() => pool.Run(Fibonacci.ByFunction, 12));
        Assert.Contains($"the {workers} workers", starved.Message, StringComparison.Ordinal);
        Assert.Equal(1, pool.Run(Fibonacci.ByFunction, 1));
    }

    [Fact]
    public void Run_WithATimeLimitOfNothing_IsAnError()
    {
        using var pool = new WorkerPool(new PoolOptions { Workers = 1 });
        Assert.Throws<ArgumentOutOfRangeException>(() => pool.Run(Fibonacci.ByFunction, 1, TimeSpan.Zero));
    }

    [Theory]
    [InlineData(0, 1)]
    [InlineData(1, 0)]
    public void Options_OutOfRange_AreRefused(int workers, int patience) =>
        Assert.Throws<ArgumentOutOfRangeException>(
            () => new WorkerPool(new PoolOptions { Workers = workers, Patience = patience }).Dispose());

    [Fact]
    public void Options_ThatExcludeEachOther_AreRefusedWithTheReason()
    {
        PoolOptions[] wrong =
        [
            new() { ThiefTakes = ThiefTakes.Newest },
            new() { OwnerTakes = OwnerTakes.Oldest },
            new() { Queues = Queues.Shared, Victim = VictimChoice.Lowest },
            new() { Queues = Queues.Shared, AtJoin = AtJoin.Leapfrog },
            new() { Deque = DequeKind.OneLock, OwnerTakes = OwnerTakes.Oldest, AtJoin = AtJoin.Leapfrog },
        ];
        Assert.All(wrong, options =>
        {
            var refused = Assert.Throws<ArgumentException>(() => new WorkerPool(options).Dispose());
            Assert.EndsWith(".", refused.Message, StringComparison.Ordinal);
        });
    }

    private delegate void Body(Worker worker);

    private static void Refused(string kind, string words, Body wrong)
    {
        using var pool = new WorkerPool(PoolKinds.Options(kind));
        for (int i = 0; i < 20; i++)
        {
            var error = Assert.Throws<PoolMisuseException>(
                () => pool.Run(static (worker, body) => body(worker), wrong));
            Assert.Contains(words, error.Message, StringComparison.Ordinal);
        }

        Assert.Equal(144, pool.Run(Fibonacci.ByFunction, 12));
    }
}
