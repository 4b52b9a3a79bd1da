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
    private (Replay Replay, DequeOptions Options, double Stack, double Scale)? _of;
    private int _moment;
    private bool _isOff;

    /// <summary>Forgets the rows when they belong to another figure.</summary>
    /// <param name="of">What all rows of a figure depend on.</param>
    /// <param name="isOff">Whether a task is queued twice: such rows are numbered across the figure.</param>
    internal void Begin((Replay Replay, DequeOptions Options, double Stack, double Scale) of, bool isOff)
    {
        if (!of.Equals(_of))
            _rows.Clear();
        (_of, _isOff) = (of, isOff);
        _moment = unchecked(_moment + 1);
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

        row.Moment = _moment;
        return row;
    }

    /// <summary>Keeps a row, unless something was moved in it.</summary>
    internal void Keep(
        WorkerStage worker, Area place, Group drawn, double laneEnd, ImmutableArray<(int Task, double Work)> tasks, int moved)
    {
        if (!_isOff && !tasks.Any(one => one.Task == moved))
            _rows[worker.Worker] = new(worker, place, drawn, laneEnd, tasks) { Moment = _moment };
    }

    /// <summary>The row that stands in the present figure; null when it was drawn for this moment alone.</summary>
    internal Row? Shown(WorkerStage worker) =>
        _rows.TryGetValue(worker.Worker, out var row) && row.Moment == _moment ? row : null;

    internal sealed record Row(
        WorkerStage Worker, Area Place, Group Drawn, double LaneEnd, ImmutableArray<(int Task, double Work)> Tasks)
    {
        /// <summary>The figure in which it stands.</summary>
        public int Moment { get; set; }

        /// <summary>It in words; null until asked for.</summary>
        public string? Sentence { get; set; }
    }
}
