using Rookery.Pool.Workers;

namespace Rookery.Pool;

/// <summary>
/// A forked action, to be joined once, on the worker that forked it; as <see cref="Forked{TTask,TResult}"/>.
/// </summary>
/// <typeparam name="TState">What the action needs to know.</typeparam>
public readonly struct ForkedCall<TState>
{
    internal readonly Forked<ActionTask<TState>, Nothing> Inner;

    internal ForkedCall(Forked<ActionTask<TState>, Nothing> inner) => Inner = inner;
}
