namespace Rookery.Pool.Workers;

/// <summary>A loop whose body is an action of one index.</summary>
internal readonly struct IndexLoop<TState>(Action<TState, int> action, TState state) : ILoopBody
{
    /// <inheritdoc/>
    public void Run(Worker worker, int from, int to)
    {
        for (int i = from; i < to; i++)
            action(state, i);
    }
}
