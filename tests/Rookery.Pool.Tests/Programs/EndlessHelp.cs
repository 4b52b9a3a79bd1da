using System.Runtime.CompilerServices;

namespace Rookery.Pool.Tests.Programs;

/// <summary>Recursion without end, which asks for stack before each step as the runtime offers.</summary>
internal readonly struct EndlessHelp(long depth) : IForkTask<long>
{
    /// <inheritdoc/>
    public long Run(Worker worker)
    {
        RuntimeHelpers.EnsureSufficientExecutionStack();
        var child = worker.Fork<EndlessHelp, long>(new(depth + 1));
        return worker.Join(child) + 1;
    }
}
