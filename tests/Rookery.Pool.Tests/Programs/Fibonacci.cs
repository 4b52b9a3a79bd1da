namespace Rookery.Pool.Tests.Programs;

/// <summary>Recursive Fibonacci numbers without a cut-off: as many forks as there are inner calls.</summary>
internal readonly struct Fibonacci(int n) : IForkTask<long>
{
    /// <inheritdoc/>
    public long Run(Worker worker)
    {
        if (n < 2)
            return n;
        var left = worker.Fork<Fibonacci, long>(new(n - 1));
        long right = new Fibonacci(n - 2).Run(worker);
        return worker.Join(left) + right;
    }

    /// <summary>The same by functions.</summary>
    public static long ByFunction(Worker worker, int n)
    {
        if (n < 2)
            return n;
        var left = worker.Fork(ByFunction, n - 1);
        long right = ByFunction(worker, n - 2);
        return worker.Join(left) + right;
    }
}
