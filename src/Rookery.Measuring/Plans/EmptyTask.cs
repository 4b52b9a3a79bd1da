using Rookery.Pool;

namespace Rookery.Measuring.Plans;

/// <summary>A task that does nothing: what its run takes is what the pool takes to begin and to end a run.</summary>
internal readonly struct EmptyTask : IForkTask<Nothing>
{
    /// <inheritdoc/>
    public Nothing Run(Worker worker) => default;
}
