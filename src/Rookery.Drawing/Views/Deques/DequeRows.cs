using System.Collections.Immutable;
using Rookery.Traces.Replaying;

namespace Rookery.Drawing;

/// <summary>
/// Rows of <see cref="DequeView"/> as they were last drawn: given again with the next moment of the same run, what did
/// not change is not drawn anew. The figure is the same with and without.
/// </summary>
/// <remarks>
/// A step changes one worker or two. A row is taken again when its worker's stage is the very same, its queued tasks
/// contain the same work, and the last event neither acted nor moved anything there. Mutable, for one thread.
/// </remarks>
public sealed class DequeRows
{
    private readonly Dictionary<int, Row> _rows = [];
    private readonly Dictionary<int, Told> _told = [];
    private (Replay Replay, DequeOptions Options, double Stack, double Scale)? _of;
    private bool _isOff;

    /// <summary>Forgets the rows when they belong to another figure.</summary>
    /// <param name="of">What all rows of a figure depend on.</param>
    /// <param name="isOff">Whether a task is queued twice: such rows are numbered across the figure.</param>
    internal void Begin((Replay Replay, DequeOptions Options, double Stack, double Scale) of, bool isOff)
    {
        if (!of.Equals(_of))
        {
            _rows.Clear();
            _told.Clear();
        }

        (_of, _isOff) = (of, isOff);
    }

    /// <summary>The row of a worker, where it would be drawn the same; null otherwise.</summary>
    internal Row? Find(WorkerStage worker, Area place, Moment moment, int moved)
    {
        if (_isOff || !_rows.TryGetValue(worker.Worker, out var row)
            || !ReferenceEquals(row.Worker, worker) || row.Place != place)
            return null;
        foreach (var (task, work) in row.Tasks)
        {
            if (task == moved || !moment.WorkIn(task).Equals(work))
                return null;
        }

        return row;
    }

    /// <summary>The sentence about a worker, where it would be told the same; null otherwise.</summary>
    internal string? SentenceOf(WorkerStage worker, Moment moment)
    {
        if (!_told.TryGetValue(worker.Worker, out var told) || !ReferenceEquals(told.Worker, worker))
            return null;
        foreach (var (task, work) in told.Tasks)
        {
            if (!moment.WorkIn(task).Equals(work))
                return null;
        }

        return told.Sentence;
    }

    /// <summary>Keeps the sentence about a worker.</summary>
    /// <param name="worker">The worker.</param>
    /// <param name="tasks">The tasks whose work it names.</param>
    /// <param name="sentence">The sentence.</param>
    internal void Tell(WorkerStage worker, ImmutableArray<(int Task, double Work)> tasks, string sentence) =>
        _told[worker.Worker] = new(worker, tasks, sentence);

    /// <summary>Keeps a row, unless something was moved in it.</summary>
    internal void Keep(
        WorkerStage worker, Area place, Group drawn, double laneEnd, ImmutableArray<(int Task, double Work)> tasks,
        int moved)
    {
        if (!_isOff && !tasks.Any(one => one.Task == moved))
            _rows[worker.Worker] = new(worker, place, drawn, laneEnd, tasks);
    }

    internal sealed record Row(
        WorkerStage Worker, Area Place, Group Drawn, double LaneEnd, ImmutableArray<(int Task, double Work)> Tasks);

    private sealed record Told(WorkerStage Worker, ImmutableArray<(int Task, double Work)> Tasks, string Sentence);
}
