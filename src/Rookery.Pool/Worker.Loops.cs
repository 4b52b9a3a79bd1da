using Rookery.Pool.Workers;

namespace Rookery.Pool;

/// <content>Parallel loops and reductions.</content>
public readonly ref partial struct Worker
{
    /// <summary>Pieces for each worker when no grain is given: enough that an uneven loop comes out even.</summary>
    private const int PiecesPerWorker = 8;

    /// <summary>Runs a loop in parallel, by halves.</summary>
    /// <param name="from">The first index.</param>
    /// <param name="to">The index after the last; the loop is empty when it is not above <paramref
    /// name="from"/>.</param>
    /// <param name="body">What is done with a piece.</param>
    /// <param name="grain">Longest piece, at least 1; 0 for one that gives each worker about eight.</param>
    public void For<TBody>(int from, int to, TBody body, int grain = 0)
        where TBody : ILoopBody
    {
        if (to <= from)
            return;
        new LoopTask<TBody>(body, from, to, GrainOf(from, to, grain)).Run(this);
        _core.Recorder?.Look();
    }

    /// <inheritdoc cref="For{TBody}(int,int,TBody,int)"/>
    /// <param name="from">The first index.</param>
    /// <param name="to">The index after the last.</param>
    /// <param name="state">What the action needs to know.</param>
    /// <param name="action">What is done with one index.</param>
    /// <param name="grain">Longest piece; 0 for one that gives each worker about eight.</param>
    public void For<TState>(int from, int to, TState state, Action<TState, int> action, int grain = 0) =>
        For(from, to, new IndexLoop<TState>(action, state), grain);

    /// <summary>Sums up in parallel, by halves, in the order of the indices.</summary>
    /// <param name="from">The first index.</param>
    /// <param name="to">The index after the last.</param>
    /// <param name="body">The value of a piece, and how two are combined.</param>
    /// <param name="empty">What an empty range gives.</param>
    /// <param name="grain">Longest piece, at least 1; 0 for one that gives each worker about eight.</param>
    public TResult Reduce<TBody, TResult>(int from, int to, TBody body, TResult empty, int grain = 0)
        where TBody : IReduction<TResult>
    {
        if (to <= from)
            return empty;
        TResult result = new ReduceTask<TBody, TResult>(body, from, to, GrainOf(from, to, grain)).Run(this);
        _core.Recorder?.Look();
        return result;
    }

    /// <inheritdoc cref="Reduce{TBody,TResult}(int,int,TBody,TResult,int)"/>
    /// <param name="from">The first index.</param>
    /// <param name="to">The index after the last.</param>
    /// <param name="state">What the functions need to know.</param>
    /// <param name="map">The value of one index.</param>
    /// <param name="combine">The value of two neighbours.</param>
    /// <param name="empty">What an empty range gives.</param>
    /// <param name="grain">Longest piece; 0 for one that gives each worker about eight.</param>
    public TResult Reduce<TState, TResult>(
        int from, int to, TState state, Func<TState, int, TResult> map, Func<TResult, TResult, TResult> combine,
        TResult empty, int grain = 0) =>
        Reduce(from, to, new IndexReduction<TState, TResult>(map, combine, state), empty, grain);

    private int GrainOf(int from, int to, int grain)
    {
        if (grain < 0)
        {
            throw new ArgumentOutOfRangeException(
                nameof(grain), grain, $"The grain is {grain}; it can be 0 (choose for me) or more.");
        }

        long length = (long)to - from;
        if (length > int.MaxValue)
            throw new ArgumentOutOfRangeException(nameof(to), to, "A loop can have at most 2^31 - 1 steps.");
        return grain > 0 ? grain : (int)Math.Max(1, length / (PiecesPerWorker * (long)_core.Pool.WorkerCount));
    }
}
