namespace Rookery.Pool;

/// <summary>
/// The body of a parallel loop as data; make it a <c>readonly struct</c>, as an <see cref="IForkTask{TResult}"/>.
/// </summary>
public interface ILoopBody
{
    /// <summary>Does a piece of the loop.</summary>
    /// <param name="worker">The worker that runs it.</param>
    /// <param name="from">The first index.</param>
    /// <param name="to">The index after the last.</param>
    void Run(Worker worker, int from, int to);
}
