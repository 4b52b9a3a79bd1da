namespace Rookery.Pool;

/// <summary>A piece of work as data: what it needs are its fields, what it does is <see cref="Run"/>.</summary>
/// <remarks>
/// Make it a <c>readonly struct</c>: a fork then copies it into a place that the worker keeps, without allocation, and
/// a call to it costs no more than any other call. <see cref="Run"/> may be called on any worker, once for each fork.
/// </remarks>
/// <typeparam name="TResult">What it computes.</typeparam>
public interface IForkTask<TResult>
{
    /// <summary>Does the work.</summary>
    /// <param name="worker">The worker that runs it; everything that it forks goes through this worker.</param>
    TResult Run(Worker worker);
}
