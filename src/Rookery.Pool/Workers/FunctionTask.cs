namespace Rookery.Pool.Workers;

/// <summary>A function and its state, as a task.</summary>
internal readonly struct FunctionTask<TState, TResult>(ForkFunction<TState, TResult> function, TState state)
    : IForkTask<TResult>, INamedTask
{
    /// <inheritdoc/>
    public object NameSource => function;

    /// <inheritdoc/>
    public TResult Run(Worker worker) => function(worker, state);
}
