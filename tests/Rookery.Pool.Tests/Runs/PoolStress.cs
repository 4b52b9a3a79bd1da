using Rookery.Pool.Tests.Programs;

namespace Rookery.Pool.Tests.Runs;

/// <summary>Much of everything: more workers than processors, many callers, many pools, many forks.</summary>
public sealed class PoolStress
{
    // 2 F(34) - 1 = 11,405,773 calls, one fork for each of the 5,702,886 inner ones (F(33) = 3,524,578 and F(34) =
    // 5,702,887).
    // Two runs: above 10^7 forks with not one lost, or the sum would differ. bench/ does 10^9.
    [Theory]
    [InlineData(FencePlacement.Thief)]
    [InlineData(FencePlacement.Owner)]
    public void Forks_TenMillionOfThem_AreAllDoneOnce(FencePlacement fence)
    {
        using var pool = new WorkerPool(new PoolOptions { Workers = 2, Fence = fence });
        Assert.Equal(3_524_578, pool.Run<Fibonacci, long>(new(33)));
        Assert.Equal(3_524_578, pool.Run<Fibonacci, long>(new(33)));
    }

    [Fact]
    public void Workers_ManyMoreThanProcessors_GiveTheSameResult()
    {
        using var pool = new WorkerPool(new PoolOptions { Workers = 32, Patience = 3 });
        for (int round = 0; round < 20; round++)
            Assert.Equal(10946, pool.Run<Fibonacci, long>(new(21)));
    }

    [Fact]
    public void Callers_FromManyThreads_GetTheirOwnResults()
    {
        using var pool = new WorkerPool(new PoolOptions { Workers = 3, Patience = 5 });
        Parallel.For(0, 8, new ParallelOptions { MaxDegreeOfParallelism = 8 }, caller =>
        {
            for (int i = 0; i < 200; i++)
            {
                int n = 5 + ((caller + i) % 10);
                Assert.Equal(Serial(n), pool.Run(Fibonacci.ByFunction, n));
            }
        });
    }

    // Many short runs with pauses: workers fall asleep and are woken over and over. A lost wake-up would hang here.
    [Fact]
    public void Sleepers_WokenThousandsOfTimes_AreNeverForgotten()
    {
        using var pool = new WorkerPool(new PoolOptions { Workers = 3, Patience = 1 });
        for (int i = 0; i < 5_000; i++)
            Assert.Equal(34, pool.Run(Fibonacci.ByFunction, 9));
    }

    [Fact]
    public void Pools_StartedAndStopped_LeaveNothingBehind()
    {
        int threads = System.Diagnostics.Process.GetCurrentProcess().Threads.Count;
        for (int i = 0; i < 10_000; i++)
        {
            using var pool = new WorkerPool(new PoolOptions { Workers = 1 + (i % 2) });
            if (i % 20 == 0)
                Assert.Equal(5, pool.Run(Fibonacci.ByFunction, 5));
        }

        int left = System.Diagnostics.Process.GetCurrentProcess().Threads.Count;
        Assert.True(left < threads + 20, $"{threads} threads before, {left} afterwards");
    }

    [Fact]
    public void Run_InsideATask_IsACall()
    {
        using var pool = new WorkerPool(new PoolOptions { Workers = 1 });
        Assert.Equal(55, pool.Run(static (worker, n) => worker.Pool.Run(Fibonacci.ByFunction, n), 10));
    }

    [Fact]
    public void Run_OfAnotherPoolInsideATask_Works()
    {
        using var outer = new WorkerPool(new PoolOptions { Workers = 2 });
        using var inner = new WorkerPool(new PoolOptions { Workers = 2 });
        long sum = outer.Run(
            static (worker, pool) =>
            {
                var there = worker.Fork(static (_, p) => p.Run(Fibonacci.ByFunction, 10), pool);
                return pool.Run(Fibonacci.ByFunction, 11) + worker.Join(there);
            },
            inner);
        Assert.Equal(55 + 89, sum);
    }

    [Theory]
    [InlineData(FencePlacement.Thief)]
    [InlineData(FencePlacement.Owner)]
    public void ForkPath_OnceItsDepthWasReached_AllocatesNothing(FencePlacement fence)
    {
        using var pool = new WorkerPool(new PoolOptions { Workers = 1, Fence = fence });
        long Allocated() => pool.Run(
            static (worker, n) =>
            {
                long before = GC.GetAllocatedBytesForCurrentThread();
                new Fibonacci(n).Run(worker);
                Fibonacci.ByFunction(worker, n);
                return GC.GetAllocatedBytesForCurrentThread() - before;
            },
            20);
        Allocated();
        Assert.Equal(0, Allocated());
    }

    private static long Serial(int n) => n < 2 ? n : Serial(n - 1) + Serial(n - 2);
}
