using Rookery.Pool.Tests.Programs;

namespace Rookery.Pool.Tests.Runs;

/// <summary>
/// Results that others have published, on every kind of pool: a task lost or done twice changes them.
/// </summary>
public sealed class WorkerPoolReferences
{
    public static TheoryData<string> Pools => PoolKinds.Names;

    // OEIS A000170, n = 1 to 10 (list of the sequence).
    private static readonly long[] s_queens = [1, 0, 0, 2, 10, 4, 40, 92, 352, 724];

    [Theory]
    [MemberData(nameof(Pools))]
    public void Queens_OnSmallBoards_HaveThePublishedNumbersOfSolutions(string kind)
    {
        using var pool = new WorkerPool(PoolKinds.Options(kind));
        for (int size = 1; size <= 8; size++)
            Assert.Equal(s_queens[size - 1], pool.Run<Queens, long>(new(size, 0, 0, 0, 0)));
    }

    [Fact]
    public void Queens_OnTenRows_HaveThePublishedNumberOfSolutions()
    {
        using var pool = new WorkerPool(new PoolOptions { Workers = 2 });
        Assert.Equal(s_queens[9], pool.Run<Queens, long>(new(10, 0, 0, 0, 0)));
    }

    // UTS sample tree T1: fixed geometric, depth 10, b0 = 4, seed 19 (the benchmark's file of sample workloads).
    [Fact]
    public void UnbalancedTree_T1_HasThePublishedSize()
    {
        using var pool = new WorkerPool(new PoolOptions { Workers = 2 });
        Assert.Equal(
            new TreeCount(4_130_071, 10, 3_305_118), pool.Run<UnbalancedTree, TreeCount>(UnbalancedTree.Root(19, 10)));
    }

    // fib(n) by its recurrence; F(20) = 6765 (OEIS A000045).
    [Theory]
    [MemberData(nameof(Pools))]
    public void Fibonacci_WithoutCutOff_IsRight(string kind)
    {
        using var pool = new WorkerPool(PoolKinds.Options(kind));
        for (int round = 0; round < 5; round++)
            Assert.Equal(6765, pool.Run<Fibonacci, long>(new(20)));
        Assert.Equal(6765, pool.Run(Fibonacci.ByFunction, 20));
    }

    [Theory]
    [MemberData(nameof(Pools))]
    public void MergeSort_OfRandomNumbers_AgreesWithTheRuntimesSort(string kind)
    {
        using var pool = new WorkerPool(PoolKinds.Options(kind));
        var random = new Random(5);
        int[] items = [.. Enumerable.Range(0, 20_000).Select(_ => random.Next())];
        int[] expected = [.. items];
        Array.Sort(expected);
        pool.Run<MergeSort, Nothing>(new(items, new int[items.Length], 0, items.Length));
        Assert.Equal(expected, items);
    }

    // The sum of the first n whole numbers is n (n + 1) / 2 (Gauss, as the schoolbook tells).
    [Theory]
    [MemberData(nameof(Pools))]
    public void Reduce_OfWholeNumbers_IsExact(string kind)
    {
        using var pool = new WorkerPool(PoolKinds.Options(kind));
        long sum = pool.Run(
            static (worker, n) => worker.Reduce(0, n, 0, static (_, i) => i + 1L, static (a, b) => a + b, 0L, grain: 3),
            10_000);
        Assert.Equal(10_000L * 10_001 / 2, sum);
    }

    [Theory]
    [MemberData(nameof(Pools))]
    public void For_OverARange_DoesEachIndexOnce(string kind)
    {
        using var pool = new WorkerPool(PoolKinds.Options(kind));
        int[] counts = new int[10_000];
        pool.Run(static (worker, n) => worker.For(0, n.Length, n, static (a, i) => a[i]++, grain: 1), counts);
        Assert.All(counts, count => Assert.Equal(1, count));
    }
}
