namespace Rookery.Pool.Workers;

/// <summary>A reduction over a range, by halves.</summary>
internal readonly struct ReduceTask<TBody, TResult>(TBody body, int from, int to, int grain)
    : IForkTask<TResult>, INamedTask, IPoolCode
    where TBody : IReduction<TResult>
{
    /// <inheritdoc/>
    public object NameSource => "reduce";

    /// <inheritdoc/>
    public TResult Run(Worker worker)
    {
        if (to - from <= grain)
        {
            worker.Core.Recorder?.Look();
            return body.Map(worker, from, to);
        }

        int middle = from + ((to - from) / 2);
        var left = worker.Fork<ReduceTask<TBody, TResult>, TResult>(new(body, from, middle, grain));
        TResult right = new ReduceTask<TBody, TResult>(body, middle, to, grain).Run(worker);
        TResult joined = worker.Join(left);
        worker.Core.Recorder?.Look();
        return body.Combine(joined, right);
    }
}
