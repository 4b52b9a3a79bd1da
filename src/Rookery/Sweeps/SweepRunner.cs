using System.Collections.Concurrent;
using System.Collections.Immutable;
using Rookery.Experiments;
using Rookery.Terminal;

namespace Rookery.Sweeps;

/// <summary>Computes the cells of a sweep on all cores; what is computed never depends on how many there are.</summary>
internal static class SweepRunner
{
    /// <summary>Computes what is not there yet.</summary>
    /// <param name="sweep">The sweep.</param>
    /// <param name="done">Cells of an earlier attempt.</param>
    /// <param name="threads">How many compute at once.</param>
    /// <param name="finished">Told each new cell, one at a time; null for nobody.</param>
    /// <param name="progress">Shows how far it is.</param>
    /// <param name="stop">Asked to stop; cells that are finished stay finished.</param>
    /// <returns>All cells in order.</returns>
    /// <exception cref="Notation.InputException">A cell failed: of several the first.</exception>
    public static ImmutableArray<CellResult> Run(
        Sweep sweep, ImmutableArray<CellResult> done, int threads, Action<CellResult>? finished,
        ProgressLine progress, CancellationToken stop)
    {
        var results = new CellResult?[sweep.CellCount];
        foreach (CellResult cell in done)
            results[cell.Cell] = cell;
        int[] open = [.. Enumerable.Range(0, sweep.CellCount).Where(i => results[i] is null)];
        var failures = new ConcurrentDictionary<int, Exception>();
        var gate = new Lock();
        int count = done.Length;

        // Cells differ much in length, so each thread takes the next one when it is free.
        var options = new ParallelOptions { MaxDegreeOfParallelism = threads, CancellationToken = stop };
        Parallel.ForEach(Partitioner.Create(open, EnumerablePartitionerOptions.NoBuffering), options, (index, state) =>
        {
            try
            {
                CellResult cell = sweep.Run(index, _ => StopWhenAsked(state, stop));
                results[index] = cell;
                lock (gate)
                {
                    finished?.Invoke(cell);
                    progress.Report(++count, sweep.CellCount, "runs");
                }
            }
            catch (Notation.InputException wrong)
            {
                failures[index] = wrong;
                state.Break();
            }
        });

        if (!failures.IsEmpty)
            throw failures[failures.Keys.Min()];
        return [.. results.Select(cell => cell!)];
    }

    private static void StopWhenAsked(ParallelLoopState state, CancellationToken stop)
    {
        stop.ThrowIfCancellationRequested();
        if (state.IsExceptional)
            throw new OperationCanceledException(stop);
    }
}
