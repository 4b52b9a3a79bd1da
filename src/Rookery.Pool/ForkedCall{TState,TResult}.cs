using Rookery.Pool.Workers;

namespace Rookery.Pool;

/// <summary>
/// A forked function, to be joined once, on the worker that forked it; as <see cref="Forked{TTask,TResult}"/>.
/// </summary>
/// <typeparam name="TState">What the function needs to know.</typeparam>
/// <typeparam name="TResult">What it computes.</typeparam>
public readonly struct ForkedCall<TState, TResult>
{
    internal readonly Forked<FunctionTask<TState, TResult>, TResult> Inner;

    internal ForkedCall(Forked<FunctionTask<TState, TResult>, TResult> inner) => Inner = inner;
}
