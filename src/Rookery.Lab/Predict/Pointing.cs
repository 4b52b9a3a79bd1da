using System.Collections.Immutable;
using System.Globalization;
using Rookery.Traces;
using Rookery.Traces.Replaying;
using RunStage = Rookery.Traces.Replaying.Stage;

namespace Rookery.Lab.Predict;

/// <summary>Turns what was pointed at on the stage into more of an answer.</summary>
internal static class Pointing
{
    /// <summary>The answer after pointing.</summary>
    /// <param name="answer">So far.</param>
    /// <param name="target">Such as <c>worker=2</c> or <c>task=17</c>; anything else changes nothing.</param>
    /// <param name="stage">What is shown.</param>
    /// <returns>
    /// The first worker pointed at acts; with a kind that has a victim, the next is the victim. A task in a deque says
    /// what is done with it as well: its owner takes it, anybody else steals it.
    /// </returns>
    public static Answer Point(Answer answer, string target, RunStage stage)
    {
        if (Read(target, "worker=") is { } worker && worker < stage.Workers.Length)
            return AtWorker(answer, worker);

        return Read(target, "task=") is { } task ? AtTask(answer, task, stage) : answer;
    }

    private static Answer AtWorker(Answer answer, int worker) =>
        answer.Worker is { } thief && thief != worker && HasVictim(answer.Kind)
            ? answer with { Victim = worker }
            : answer with { Worker = worker };

    // What a worker has in hand stands for the worker, except where the task is what is asked for.
    private static Answer AtCurrent(Answer answer, int task, int holder) => answer.Kind switch
    {
        null or EventKind.Take or EventKind.Sleep or EventKind.Wake or EventKind.Stop => AtWorker(answer, holder),
        var kind when HasVictim(kind) => AtWorker(answer, holder),
        _ => answer with { Task = task, Worker = answer.Worker ?? holder },
    };

    private static bool HasVictim(EventKind? kind) =>
        kind is EventKind.Steal or EventKind.Probe or EventKind.Empty or EventKind.LostRace;

    private static Answer AtTask(Answer answer, int task, RunStage stage)
    {
        foreach (WorkerStage holder in stage.Workers)
        {
            int place = holder.Deque.IndexOf(task);
            if (place >= 0)
                return InDeque(answer, task, holder, place);
            if (holder.CurrentTask == task)
                return AtCurrent(answer, task, holder.Worker);
        }

        return answer with { Task = task };
    }

    private static Answer InDeque(Answer answer, int task, WorkerStage holder, int place)
    {
        ImmutableList<int> deque = holder.Deque;
        QueueEnd? end = deque.Count == 1 ? answer.End
            : place == 0 ? QueueEnd.Oldest
            : place == deque.Count - 1 ? QueueEnd.Newest
            : answer.End;
        int actor = answer.Worker ?? holder.Worker;
        return actor == holder.Worker
            ? answer with { Worker = actor, Kind = EventKind.Take, Victim = null, End = end, Task = task }
            : answer with { Kind = EventKind.Steal, Victim = holder.Worker, End = end, Task = task };
    }

    private static int? Read(string target, string name) =>
        target.StartsWith(name, StringComparison.Ordinal)
        && int.TryParse(target[name.Length..], NumberStyles.None, CultureInfo.InvariantCulture, out int number)
            ? number
            : null;
}
