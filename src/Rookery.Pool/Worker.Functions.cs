using System.Runtime.CompilerServices;
using Rookery.Pool.Workers;

namespace Rookery.Pool;

/// <content>Forks of functions.</content>
public readonly ref partial struct Worker
{
    /// <inheritdoc cref="Fork{TTask,TResult}(TTask)"/>
    /// <param name="function">What the child does: a static function, or a lambda that captures nothing.</param>
    /// <param name="state">What it needs to know.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public ForkedCall<TState, TResult> Fork<TState, TResult>(ForkFunction<TState, TResult> function, TState state) =>
        new(Fork<FunctionTask<TState, TResult>, TResult>(new(function, state)));

    /// <inheritdoc cref="Fork{TTask,TResult}(TTask)"/>
    /// <param name="action">What the child does: a static function, or a lambda that captures nothing.</param>
    /// <param name="state">What it needs to know.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public ForkedCall<TState> Fork<TState>(ForkAction<TState> action, TState state) =>
        new(Fork<ActionTask<TState>, Nothing>(new(action, state)));

    /// <inheritdoc cref="Join{TTask,TResult}(Forked{TTask,TResult})"/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public TResult Join<TState, TResult>(ForkedCall<TState, TResult> forked) => Join(forked.Inner);

    /// <inheritdoc cref="Join{TTask,TResult}(Forked{TTask,TResult})"/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Join<TState>(ForkedCall<TState> forked) => Join(forked.Inner);

    /// <summary>Runs two functions, in parallel if another worker has time, and waits for both.</summary>
    /// <returns>What the two computed.</returns>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public (TFirst First, TSecond Second) Both<TState, TFirst, TOther, TSecond>(
        ForkFunction<TState, TFirst> first, TState firstState, ForkFunction<TOther, TSecond> second, TOther secondState)
    {
        var forked = Fork(first, firstState);
        TSecond there = second(this, secondState);
        return (Join(forked), there);
    }

    /// <summary>Runs two actions, in parallel if another worker has time, and waits for both.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Both<TState, TOther>(
        ForkAction<TState> first, TState firstState, ForkAction<TOther> second, TOther secondState)
    {
        var forked = Fork(first, firstState);
        second(this, secondState);
        Join(forked);
    }
}
