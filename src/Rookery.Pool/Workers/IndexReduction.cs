namespace Rookery.Pool.Workers;

/// <summary>A reduction by functions of one index.</summary>
internal readonly struct IndexReduction<TState, TResult>(
    Func<TState, int, TResult> map, Func<TResult, TResult, TResult> combine, TState state) : IReduction<TResult>
{
    /// <inheritdoc/>
    public TResult Map(Worker worker, int from, int to)
    {
        TResult sum = map(state, from);
        for (int i = from + 1; i < to; i++)
            sum = combine(sum, map(state, i));
        return sum;
    }

    /// <inheritdoc/>
    public TResult Combine(TResult left, TResult right) => combine(left, right);
}
