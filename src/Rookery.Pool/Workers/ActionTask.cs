namespace Rookery.Pool.Workers;

/// <summary>An action and its state, as a task.</summary>
internal readonly struct ActionTask<TState>(ForkAction<TState> action, TState state) : IForkTask<Nothing>, INamedTask
{
    /// <inheritdoc/>
    public object NameSource => action;

    /// <inheritdoc/>
    public Nothing Run(Worker worker)
    {
        action(worker, state);
        return default;
    }
}
