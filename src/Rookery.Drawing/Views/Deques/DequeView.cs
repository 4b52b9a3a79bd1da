using System.Collections.Immutable;
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
    private const int TasksTold = 8;

    /// <summary>Draws a moment.</summary>
    /// <param name="replay">The run, <c>new Replay(trace)</c>; kept by callers that draw several steps.</param>
    /// <param name="step">The state after this many events, 0 to the trace's count.</param>
    /// <param name="sentence">What the last event was, as a sentence; empty for none.</param>
    /// <param name="options">Null for the defaults.</param>
    /// <param name="rows">Kept by callers that draw moment after moment; null to draw all rows.</param>
    /// <exception cref="ArgumentOutOfRangeException">The step or an option is out of its range.</exception>
    public static Scene Draw(
        Replay replay, int step, string sentence = "", DequeOptions? options = null, DequeRows? rows = null)
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
        var words = asked.Frame.Words;
        var time = words.Time(stage.Time, trace.Inputs.TimeUnit);
        var title = words.DequeTitle(TraceSize.NameOf(trace, words), time);
        var sheet = new Sheet(asked.Frame, title, SubtitleOf(trace, moment, words));
        new DequeDrawing(moment, asked, sheet, rows).Draw(asked.ShowSentence ? sentence : "");
        return sheet.Build(DescriptionOf(moment, sentence, words, rows));
    }

    /// <summary>
    /// The most work that any task contained when it was queued; 0 when none was: one scale for figures of several
    /// steps.
    /// </summary>
    /// <param name="replay">The run.</param>
    public static long LargestQueued(Replay replay) => replay.LargestQueuedWork;

    private static string SubtitleOf(Trace trace, Moment moment, DrawingWords words)
    {
        var working = moment.Stage.Workers.Count(worker => worker.Stretch == Stretch.Working);
        return words.DequeSubtitle(
            moment.Stage.Step, trace.Count, working, moment.Stage.Workers.Length, moment.QueuedCount);
    }

    private static string DescriptionOf(Moment moment, string sentence, DrawingWords words, DequeRows? rows)
    {
        const int workersMax = 16;
        var parts = new List<string>();
        if (sentence.Length > 0)
            parts.Add(sentence);
        foreach (var worker in moment.Stage.Workers.Take(workersMax))
        {
            var told = rows?.SentenceOf(worker, moment);
            if (told is null)
            {
                told = SentenceOf(moment, worker, words);
                rows?.Tell(worker, [.. worker.Deque.Take(TasksTold).Select(task => (task, moment.WorkIn(task)))], told);
            }

            parts.Add(told);
        }

        if (moment.Stage.Workers.Length > workersMax)
            parts.Add(words.MoreWorkersSentence(moment.Stage.Workers.Length - workersMax));
        if (moment.IsShared)
            parts.Add(words.SharedQueueSentence(ListOf(moment, moment.Stage.SharedQueue, TasksTold, words)));
        return string.Join(' ', parts);
    }

    private static string SentenceOf(Moment moment, WorkerStage worker, DrawingWords words)
    {
        var deque = moment.HasDeques ? ListOf(moment, worker.Deque, TasksTold, words) : null;
        return words.WorkerSentence(
            worker.Worker, Moment.StateOf(worker, words), moment.LabelOf(worker.CurrentTask), deque);
    }

    private static string ListOf(Moment moment, ImmutableList<int> tasks, int most, DrawingWords words)
    {
        if (tasks.Count == 0)
            return words.Empty;
        var names = tasks.Take(most).Select(task => words.TaskWithWork(moment.LabelOf(task), moment.WorkIn(task)));
        return words.FromTop(string.Join(", ", names), tasks.Count - most);
    }
}
