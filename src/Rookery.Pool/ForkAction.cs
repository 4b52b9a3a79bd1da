namespace Rookery.Pool;

/// <summary>An action that can be forked: it takes what it needs as state, so that nothing is captured.</summary>
/// <param name="worker">The worker that runs it.</param>
/// <param name="state">What it needs to know.</param>
/// <typeparam name="TState">What it needs to know.</typeparam>
public delegate void ForkAction<in TState>(Worker worker, TState state);
