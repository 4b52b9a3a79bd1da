using Rookery.Pool.Tests.Programs;

namespace Rookery.Pool.Tests.Runs;

/// <summary>Exceptions, cancellation, time limits, and the end of a pool while it works.</summary>
public sealed class FailureTests
{
    public static TheoryData<string> Pools => PoolKinds.Names;

    [Theory]
    [MemberData(nameof(Pools))]
    public void Join_OfAChildThatThrew_ThrowsItWithItsStack(string kind)
    {
        using var pool = new WorkerPool(PoolKinds.Options(kind));
        for (int round = 0; round < 30; round++)
        {
            var thrown = Assert.Throws<InvalidDataException>(() => pool.Run<ThrowingTree, long>(new(8, 37)));
            Assert.Equal("leaf 37", thrown.Message);
            Assert.Contains(nameof(ThrowingTree), thrown.StackTrace, StringComparison.Ordinal);
        }

        Assert.Equal(256, pool.Run<ThrowingTree, long>(new(8, -1)));
    }

    [Theory]
    [MemberData(nameof(Pools))]
    public void Task_ThatCatchesItsChildsException_GoesOn(string kind)
    {
        using var pool = new WorkerPool(PoolKinds.Options(kind));
        for (int round = 0; round < 30; round++)
        {
            long sum = pool.Run(
                static (worker, _) =>
                {
                    long before = worker.Join(worker.Fork(Fibonacci.ByFunction, 10));
                    try
                    {
                        var child = worker.Fork<ThrowingTree, long>(new(5, 3));
                        before += worker.Join(child);
                    }
                    catch (InvalidDataException)
                    {
                        before += 1;
                    }

                    return before + worker.Join(worker.Fork(Fibonacci.ByFunction, 11));
                },
                0);
            Assert.Equal(55 + 1 + 89, sum);
        }
    }

    [Theory]
    [MemberData(nameof(Pools))]
    public void Run_ThatIsCancelled_EndsAndLeavesThePoolUsable(string kind)
    {
        using var pool = new WorkerPool(PoolKinds.Options(kind));
        for (int round = 0; round < 3; round++)
        {
            using var stop = new CancellationTokenSource(TimeSpan.FromMilliseconds(5));
            var thrown = Assert.Throws<OperationCanceledException>(
                () => pool.Run(Fibonacci.ByFunction, 60, cancellation: stop.Token));
            Assert.Equal(stop.Token, thrown.CancellationToken);
        }

        Assert.Equal(55, pool.Run(Fibonacci.ByFunction, 10));
    }

    [Theory]
    [MemberData(nameof(Pools))]
    public void Run_OutOfTime_EndsAndSaysSo(string kind)
    {
        using var pool = new WorkerPool(PoolKinds.Options(kind));
        Assert.Throws<TimeoutException>(() => pool.Run(Fibonacci.ByFunction, 60, TimeSpan.FromMilliseconds(5)));
        Assert.Equal(55, pool.Run(Fibonacci.ByFunction, 10, TimeSpan.FromHours(1)));
    }

    [Theory]
    [MemberData(nameof(Pools))]
    public void Dispose_InTheMiddleOfRuns_EndsThem(string kind)
    {
        PoolOptions options = PoolKinds.Options(kind);
        int callers = options.RecordingCapacity > 0 ? 1 : 3;
        for (int round = 0; round < 3; round++)
        {
            var pool = new WorkerPool(options);
            using var started = new ManualResetEventSlim();
            var threads = Enumerable.Range(0, callers).Select(_ => Task.Factory.StartNew(
                () => pool.Run(
                    static (worker, begun) =>
                    {
                        begun.Set();
                        return Fibonacci.ByFunction(worker, 60);
                    },
                    started),
                CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default)).ToArray();

            // At least one: others may wait for a worker, since all may be busy with the first.
            started.Wait();
            pool.Dispose();
            foreach (Task<long> run in threads)
                Assert.IsType<ObjectDisposedException>(Assert.Throws<AggregateException>(run.Wait).InnerException);
        }
    }

    [Fact]
    public void Task_WithoutForks_SeesThatItIsToStop()
    {
        using var pool = new WorkerPool(new PoolOptions { Workers = 1 });
        Assert.Throws<TimeoutException>(() => pool.Run(
            static (worker, _) =>
            {
                while (!worker.IsStopRequested)
                    Thread.SpinWait(10);
                worker.ThrowIfStopRequested();
            },
            0, TimeSpan.FromMilliseconds(3)));
    }

    [Fact]
    public void Recursion_WithoutEnd_IsAnErrorOfTheRun()
    {
        // Through stolen or helped tasks; a plain recursion without end ends any .NET program.
        using var pool = new WorkerPool(
            new PoolOptions { Workers = 2, Deque = DequeKind.OneLock, StackBytes = 512 << 10 });
        Assert.Throws<InsufficientExecutionStackException>(() => pool.Run<EndlessHelp, long>(new(0)));
        Assert.Equal(55, pool.Run(Fibonacci.ByFunction, 10));
    }
}
