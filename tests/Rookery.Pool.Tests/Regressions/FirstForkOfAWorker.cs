using Rookery.Pool.Tests.Programs;

namespace Rookery.Pool.Tests.Regressions;

/// <summary>
/// The first fork of a worker once had the serial number 0, as frames have that were never used. When such a frame of
/// another type lay at the same depth, the join of that first child took it for the open one: the run ended with a
/// child "never joined", or waited for ever for the end of a child that nobody had forked.
/// </summary>
public sealed class FirstForkOfAWorker
{
    [Fact]
    public void Join_OfTheVeryFirstFork_WithFramesOfOtherTypesAtItsDepth_ClosesItsPlace()
    {
        // Whichever of the two types the process met first, one of the two orders has it before the other.
        for (int round = 0; round < 2; round++)
        {
            using (var pool = new WorkerPool(new PoolOptions { Workers = 1 }))
            {
                Assert.Equal((55, 8), pool.Run(
                    static (worker, _) =>
                    {
                        var first = worker.Fork<Fibonacci, long>(new(10));
                        var second = worker.Fork<ThrowingTree, long>(new(3, -1));
                        return (worker.Join(first), worker.Join(second));
                    },
                    0));
            }

            using (var pool = new WorkerPool(new PoolOptions { Workers = 1 }))
            {
                Assert.Equal((8, 55), pool.Run(
                    static (worker, _) =>
                    {
                        var first = worker.Fork<ThrowingTree, long>(new(3, -1));
                        var second = worker.Fork<Fibonacci, long>(new(10));
                        return (worker.Join(first), worker.Join(second));
                    },
                    0));
            }
        }
    }
}
