namespace Rookery.Pool;

/// <summary>A function that can be forked: it takes what it needs as state, so that nothing is captured.</summary>
/// <param name="worker">The worker that runs it.</param>
/// <param name="state">What it needs to know.</param>
/// <typeparam name="TState">What it needs to know.</typeparam>
/// <typeparam name="TResult">What it computes.</typeparam>
public delegate TResult ForkFunction<in TState, out TResult>(Worker worker, TState state);
