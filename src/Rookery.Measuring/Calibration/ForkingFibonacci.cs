using Rookery.Pool;

namespace Rookery.Measuring.Calibration;

/// <summary>Fibonacci numbers without a cut-off: nothing but forks and joins.</summary>
internal readonly struct ForkingFibonacci(int n) : IForkTask<long>
{
    /// <inheritdoc/>
    public long Run(Worker worker)
    {
        if (n < 2)
            return n;
        var left = worker.Fork<ForkingFibonacci, long>(new(n - 1));
        long right = new ForkingFibonacci(n - 2).Run(worker);
        return worker.Join(left) + right;
    }
}
