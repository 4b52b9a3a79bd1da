namespace Rookery.Pool.Workers;

/// <summary>A loop over a range: halves are forked until a piece is no longer than the grain.</summary>
internal readonly struct LoopTask<TBody>(TBody body, int from, int to, int grain)
    : IForkTask<Nothing>, INamedTask, IPoolCode
    where TBody : ILoopBody
{
    /// <inheritdoc/>
    public object NameSource => "loop";

    /// <inheritdoc/>
    public Nothing Run(Worker worker)
    {
        if (to - from <= grain)
        {
            worker.Core.Recorder?.Look();
            body.Run(worker, from, to);
            return default;
        }

        int middle = from + ((to - from) / 2);
        var left = worker.Fork<LoopTask<TBody>, Nothing>(new(body, from, middle, grain));
        new LoopTask<TBody>(body, middle, to, grain).Run(worker);
        return worker.Join(left);
    }
}
