using System.Collections.Immutable;
using System.Globalization;
using Rookery.Traces;
using Rookery.Traces.Replaying;

namespace Rookery.Drawing;

/// <summary>
/// The workers at one step: what each is doing, the tasks that wait below, and its deque with top and bottom.
/// </summary>
/// <remarks>
/// A queued task is a square whose area is proportional to the work that it still contains, on one scale for the whole
/// figure, so that it is seen how much a thief takes away. What the last event moved has a bold edge; where it was
/// taken from stands an empty square.
/// </remarks>
public static class DequeView
{
    /// <summary>Draws a moment.</summary>
    /// <param name="replay">The run, <c>new Replay(trace)</c>; kept by callers that draw several steps.</param>
    /// <param name="step">The state after this many events, 0 to the trace's count.</param>
    /// <param name="sentence">What the last event was, as a sentence; empty for none.</param>
    /// <param name="options">Null for the defaults.</param>
    /// <exception cref="ArgumentOutOfRangeException">The step or an option is out of its range.</exception>
    public static Scene Draw(Replay replay, int step, string sentence = "", DequeOptions? options = null)
    {
        var asked = options ?? new();
        ArgumentOutOfRangeException.ThrowIfNegative(step);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(step, replay.Trace.Count);
        if (asked.WorkersMax is { } workersMax)
        {
            ArgumentOutOfRangeException.ThrowIfLessThan(workersMax, 1);
            ArgumentOutOfRangeException.ThrowIfGreaterThan(workersMax, 16);
        }

        var (trace, stage) = (replay.Trace, replay.At(step));
        var moment = new Moment(replay, stage);
        var unit = trace.Inputs.TimeUnit;
        var title = $"{TraceSize.NameOf(trace)} at {TimeText.Of(stage.Time, unit)}";
        var sheet = new Sheet(asked.Frame, title, SubtitleOf(trace, moment));
        new DequeDrawing(moment, asked, sheet).Draw(asked.ShowSentence ? sentence : "");
        return sheet.Build(DescriptionOf(moment, sentence));
    }

    /// <summary>
    /// The most work that any task contained when it was queued; 0 when none was: one scale for figures of several
    /// steps.
    /// </summary>
    /// <param name="replay">The run.</param>
    public static long LargestQueued(Replay replay) => replay.LargestQueuedWork;

    private static string SubtitleOf(Trace trace, Moment moment)
    {
        var step = $"after step {NumberText.Whole(moment.Stage.Step)} of {NumberText.Whole(trace.Count)}";
        var working = moment.Stage.Workers.Count(worker => worker.Stretch == Stretch.Working);
        var queued = TraceSize.Count(moment.QueuedCount, "task");
        return $"{step}: {NumberText.Whole(working)} of {TraceSize.Count(moment.Stage.Workers.Length, "worker")} "
            + $"computing, {queued} queued";
    }

    private static string DescriptionOf(Moment moment, string sentence)
    {
        const int workersMax = 16;
        const int tasksMax = 8;
        var parts = new List<string>();
        if (sentence.Length > 0)
            parts.Add(sentence);
        foreach (var worker in moment.Stage.Workers.Take(workersMax))
        {
            var current = worker.CurrentTask >= 0 ? $", with {moment.LabelOf(worker.CurrentTask)}" : "";
            var deque = !moment.HasDeques ? "" : $"; deque {ListOf(moment, worker.Deque, tasksMax)}";
            parts.Add(string.Create(
                CultureInfo.InvariantCulture, $"Worker {worker.Worker}: {Moment.StateOf(worker)}{current}{deque}."));
        }

        if (moment.Stage.Workers.Length > workersMax)
            parts.Add($"{TraceSize.Count(moment.Stage.Workers.Length - workersMax, "more worker")}.");
        if (moment.IsShared)
            parts.Add($"Queue shared by all: {ListOf(moment, moment.Stage.SharedQueue, tasksMax)}.");
        return string.Join(' ', parts);
    }

    private static string ListOf(Moment moment, ImmutableList<int> tasks, int most)
    {
        if (tasks.Count == 0)
            return "empty";
        var names = tasks.Take(most).Select(task =>
            $"{moment.LabelOf(task)} with work {NumberText.Short(moment.WorkIn(task))}");
        var more = tasks.Count > most ? $" and {NumberText.Whole(tasks.Count - most)} more" : "";
        return $"from top {string.Join(", ", names)}{more}";
    }
}
