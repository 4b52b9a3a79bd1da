namespace Rookery.Pool;

/// <summary>A parallel sum of some kind, as data; make it a <c>readonly struct</c>.</summary>
/// <remarks>
/// Pieces are combined in the order of their indices, always by the same halves, so <see cref="Combine"/> has to be
/// associative for a meaning, not commutative; even sums that round are the same in every run with one grain.
/// </remarks>
/// <typeparam name="TResult">What is summed up.</typeparam>
public interface IReduction<TResult>
{
    /// <summary>The value of a piece.</summary>
    /// <param name="worker">The worker that runs it.</param>
    /// <param name="from">The first index.</param>
    /// <param name="to">The index after the last.</param>
    TResult Map(Worker worker, int from, int to);

    /// <summary>The value of two neighbouring pieces.</summary>
    TResult Combine(TResult left, TResult right);
}
