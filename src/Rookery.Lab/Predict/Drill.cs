using System.Collections.Immutable;
using Rookery.Traces;
using Rookery.Traces.Replaying;
using RunStage = Rookery.Traces.Replaying.Stage;

namespace Rookery.Lab.Predict;

/// <summary>Asks what comes next in a run, and judges answers. What it asks for is always the trace's own event.
/// </summary>
/// <remarks>
/// <para>
/// Fair in two ways. Events of one time have an order in the trace that nobody can see beforehand, so whoever names
/// another of them is as right. And where a draw decided (which of several victims a thief looked at, whether its look
/// found anything), the part is said to be random and does not count, whatever was answered; an answer that a draw
/// alone made wrong does not count either.
/// </para>
/// <para>Any event of any trace can be asked for. Immutable as seen from outside; for one thread.</para>
/// </remarks>
internal sealed class Drill
{
    private const int SameTimeMax = 64;

    private readonly Replay _replay;
    private readonly Trace _trace;
    private readonly Draws _draws;
    private readonly bool _isShared;
    private readonly bool _ownersTakeOldest;
    private readonly bool _thievesTakeNewest;

    /// <summary>Asks about a run.</summary>
    public Drill(Replay replay)
    {
        _replay = replay;
        _trace = replay.Trace;
        _draws = new Draws(replay);
        _isShared = _trace.Inputs.Option("queues", "per-worker") == "shared";
        _ownersTakeOldest = _trace.Inputs.Option("owner-takes", "newest") == "oldest";
        _thievesTakeNewest = _trace.Inputs.Option("thief-takes", "oldest") == "newest";
    }

    /// <summary>The kinds that are asked for unless others are chosen.</summary>
    public static ImmutableArray<EventKind> TellingKinds { get; } =
    [
        EventKind.Steal, EventKind.Take, EventKind.JoinWait, EventKind.JoinPass, EventKind.Sleep, EventKind.Wake,
    ];

    /// <summary>All kinds, in the order in which they are offered: the telling ones first.</summary>
    public static ImmutableArray<EventKind> AllKinds { get; } =
        [.. TellingKinds, .. Enum.GetValues<EventKind>().Except(TellingKinds)];

    /// <summary>The kinds that can be meant in this run: those asked for that its options permit.</summary>
    public ImmutableArray<EventKind> Offered(IReadOnlyCollection<EventKind> asked) =>
        [.. AllKinds.Where(kind => asked.Contains(kind) && CanHappen(kind))];

    /// <summary>What is asked about an event of a kind.</summary>
    public ImmutableArray<DrillPart> PartsOf(EventKind kind) => kind switch
    {
        EventKind.Steal => [DrillPart.Worker, DrillPart.Kind, DrillPart.Victim, DrillPart.End, DrillPart.Task],
        EventKind.Take => [DrillPart.Worker, DrillPart.Kind, DrillPart.End, DrillPart.Task],
        EventKind.Probe or EventKind.LostRace => [DrillPart.Worker, DrillPart.Kind, DrillPart.Victim],
        EventKind.Empty => _isShared
            ? [DrillPart.Worker, DrillPart.Kind]
            : [DrillPart.Worker, DrillPart.Kind, DrillPart.Victim],
        EventKind.JoinWait or EventKind.JoinPass or EventKind.Begin or EventKind.End or EventKind.Work
            or EventKind.Fork or EventKind.Call or EventKind.Block or EventKind.Unblock =>
            [DrillPart.Worker, DrillPart.Kind, DrillPart.Task],
        EventKind.Sleep or EventKind.Wake or EventKind.Stop => [DrillPart.Worker, DrillPart.Kind],
    };

    /// <summary>The next event that is asked for, at a step or after it; null when none follows.</summary>
    public Question? Next(int step, IReadOnlyCollection<EventKind> asked)
    {
        for (int i = Math.Max(0, step); i < _trace.Count; i++)
        {
            ref readonly TraceEvent item = ref _trace[i];
            if (asked.Contains(item.Kind) && item.Worker < _replay.Tasks.WorkerCount && !IsFurtherOfSteal(i))
                return At(i);
        }

        return null;
    }

    /// <summary>A question for a step, whatever its kind.</summary>
    public Question At(int step)
    {
        TraceEvent item = _trace[step];
        RunStage stage = _replay.At(step);
        ImmutableArray<int> tasks = MovedWith(step);
        ImmutableArray<QueueEnd> ends = EndsOf(item, stage);
        ImmutableArray<DrillPart> parts =
            [.. PartsOf(item.Kind).Where(part => part != DrillPart.End || ends.Length == 1)];
        if (item.Task < 0)
            parts = parts.Remove(DrillPart.Task);
        if (item.Other < 0 || item.Other == item.Worker)
            parts = parts.Remove(DrillPart.Victim);
        return new(step, item, parts, [.. RandomOf(item, stage).Where(part => parts.Contains(part))], tasks, ends);
    }

    /// <summary>The step after all that belongs to a question: after the last event of a steal of several.</summary>
    public int After(Question question)
    {
        int step = question.Step + 1;
        while (step < _trace.Count && IsFurtherOfSteal(step))
            step++;
        return step;
    }

    /// <summary>Judges an answer.</summary>
    /// <param name="question">What was asked.</param>
    /// <param name="answer">The answer; what it leaves out is wrong.</param>
    /// <param name="asked">The kinds that are asked for.</param>
    public Grade Judge(Question question, Answer answer, IReadOnlyCollection<EventKind> asked)
    {
        Grade best = GradeOf(question, answer, isOfSameTime: false);
        if (!best.IsRight)
        {
            foreach (Question other in SameTime(question, asked))
            {
                Grade grade = GradeOf(other, answer, isOfSameTime: true);
                if (answer.Worker == other.Event.Worker && answer.Kind == other.Event.Kind
                    && grade.Points > best.Points)
                    best = grade;
            }
        }

        TraceEvent held = best.Question.Event;
        bool isIt = answer.Worker == held.Worker && answer.Kind == held.Kind;
        return !isIt && CouldHaveBeen(question, answer)
            ? best with
            {
                Parts = [.. best.Parts.Select(part => (part.Part, DrillResult.Random))],
                CouldHaveBeen = true,
            }
            : best;
    }

    /// <summary>The first events that other workers have at the same time: whoever means one of them is as right.
    /// </summary>
    public IEnumerable<Question> SameTime(Question question, IReadOnlyCollection<EventKind> asked)
    {
        var seen = new HashSet<int> { question.Event.Worker };
        int end = Math.Min(_trace.Count, question.Step + SameTimeMax);
        for (int i = question.Step + 1; i < end && _trace[i].Time == question.Event.Time; i++)
        {
            EventKind kind = _trace[i].Kind;
            if (asked.Contains(kind) && _trace[i].Worker < _replay.Tasks.WorkerCount && seen.Add(_trace[i].Worker))
                yield return At(i);
        }
    }

    /// <summary>The tasks that can be meant by an answer so far: those of its worker's or victim's queue, or those that
    /// workers have in hand.</summary>
    public ImmutableArray<int> TasksFor(Question question, Answer answer, int most)
    {
        RunStage stage = _replay.At(question.Step);
        IEnumerable<int> found = answer.Kind switch
        {
            EventKind.Take when _isShared => stage.SharedQueue,
            EventKind.Take when answer.Worker is { } worker => stage.Workers[worker].Deque,
            EventKind.Steal when answer.Victim is { } victim => stage.Workers[victim].Deque,
            EventKind.Take or EventKind.Steal => stage.Workers.SelectMany(worker => worker.Deque),
            _ when answer.Worker is { } worker => stage.Workers[worker].Stack.Reverse()
                .Concat(stage.Workers.Select(other => other.CurrentTask)),
            _ => stage.Workers.Select(other => other.CurrentTask),
        };
        ImmutableArray<int> listed = [.. found.Where(task => task >= 0).Distinct().Take(most)];
        // A suspended task is on no stack, a new one in no queue: what is asked for can always be said.
        bool isMissing = answer.Kind == question.Event.Kind && question.Event.Task >= 0
            && answer.Kind is not (EventKind.Take or EventKind.Steal) && !listed.Contains(question.Event.Task);
        return isMissing ? [.. listed.Add(question.Event.Task).Order()] : listed;
    }

    private Grade GradeOf(Question question, Answer answer, bool isOfSameTime)
    {
        TraceEvent item = question.Event;
        bool isKind = answer.Kind == item.Kind;
        bool kindIsRandom = question.Random.Contains(DrillPart.Kind);
        var parts = ImmutableArray.CreateBuilder<(DrillPart, DrillResult)>();
        foreach (DrillPart part in question.Parts)
        {
            bool isRight = part switch
            {
                DrillPart.Worker => answer.Worker == item.Worker,
                DrillPart.Kind => isKind,
                DrillPart.Victim => isKind && answer.Victim == item.Other,
                DrillPart.End => isKind && answer.End is { } end && question.Ends.Contains(end),
                DrillPart.Task => isKind && answer.Task is { } task && IsRightTask(question, answer, task),
            };
            // Whoever could not know that it happens could not know what it moves.
            bool isRandom = question.Random.Contains(part) || (kindIsRandom && !isKind);
            parts.Add((part, isRandom ? DrillResult.Random : isRight ? DrillResult.Right : DrillResult.Wrong));
        }

        return new(question, parts.ToImmutable(), isOfSameTime, CouldHaveBeen: false);
    }

    // From a victim that was drawn, the task follows: whoever named another victim is right about that one's task.
    private bool IsRightTask(Question question, Answer answer, int task)
    {
        if (question.Tasks.Contains(task))
            return true;
        if (question.Event.Kind != EventKind.Steal || !question.Random.Contains(DrillPart.Victim)
            || answer.Victim is not { } victim)
            return false;
        ImmutableList<int> deque = _replay.At(question.Step).Workers[victim].Deque;
        return !deque.IsEmpty && task == (_thievesTakeNewest ? deque[^1] : deque[0]);
    }

    // A thief that looks at random could have been lucky where it was not.
    private bool CouldHaveBeen(Question question, Answer answer)
    {
        if (answer.Worker is not { } worker || answer.Kind is not (EventKind.Steal or EventKind.LostRace
            or EventKind.Empty or EventKind.Probe))
            return false;
        RunStage stage = _replay.At(question.Step);
        if (worker >= stage.Workers.Length || _draws.BeforeDrawnLook(stage, worker) is not { } before)
            return false;
        (int full, int bare) = Draws.OthersOf(before, worker);
        return answer.Kind is EventKind.Steal or EventKind.LostRace ? full > 0 : bare > 0;
    }

    private List<DrillPart> RandomOf(TraceEvent item, RunStage stage)
    {
        if (item.Worker >= stage.Workers.Length)
            return [];
        switch (item.Kind)
        {
            case EventKind.Probe:
                return _draws.IsDrawn(stage, item.Worker) ? [DrillPart.Victim] : [];
            case EventKind.Steal or EventKind.LostRace or EventKind.Empty or EventKind.Sleep:
                break;
            default:
                return [];
        }

        if (_draws.BeforeDrawnLook(stage, item.Worker) is not { } before)
            return [];
        (int full, int bare) = Draws.OthersOf(before, item.Worker);
        bool foundSomething = item.Kind is EventKind.Steal or EventKind.LostRace;
        bool couldDiffer = foundSomething ? bare > 0 : full > 0;
        var parts = new List<DrillPart>();
        if (couldDiffer)
            parts.AddRange([DrillPart.Worker, DrillPart.Kind]);
        if ((foundSomething ? full : bare) > 1)
            parts.Add(DrillPart.Victim);
        return parts;
    }

    private ImmutableArray<QueueEnd> EndsOf(TraceEvent item, RunStage stage)
    {
        ImmutableList<int> queue;
        if (item.Kind == EventKind.Take && item.Worker < stage.Workers.Length)
            queue = _isShared ? stage.SharedQueue : stage.Workers[item.Worker].Deque;
        else if (item.Kind == EventKind.Steal && item.Other >= 0 && item.Other < stage.Workers.Length)
            queue = stage.Workers[item.Other].Deque;
        else
            return [];
        int place = queue.IndexOf(item.Task);
        bool takesOldest = item.Kind == EventKind.Take ? _ownersTakeOldest : !_thievesTakeNewest;
        return queue.Count switch
        {
            0 or 1 => [QueueEnd.Oldest, QueueEnd.Newest],
            _ when place == 0 => [QueueEnd.Oldest],
            _ when place == queue.Count - 1 => [QueueEnd.Newest],
            _ => [takesOldest ? QueueEnd.Oldest : QueueEnd.Newest],
        };
    }

    private ImmutableArray<int> MovedWith(int step)
    {
        var tasks = ImmutableArray.CreateBuilder<int>();
        tasks.Add(_trace[step].Task);
        for (int i = step + 1; i < _trace.Count && IsFurtherOfSteal(i); i++)
            tasks.Add(_trace[i].Task);
        return tasks.ToImmutable();
    }

    // Several steal events in a row of one time, thief and victim are one steal (docs/trace.md).
    private bool IsFurtherOfSteal(int step)
    {
        if (step == 0)
            return false;
        TraceEvent item = _trace[step];
        TraceEvent former = _trace[step - 1];
        return item.Kind == EventKind.Steal && former.Kind == EventKind.Steal && item.Worker == former.Worker
            && item.Other == former.Other && item.Time == former.Time;
    }

    private bool CanHappen(EventKind kind)
    {
        int workers = _replay.Tasks.WorkerCount;
        bool mayBe = kind switch
        {
            EventKind.Steal or EventKind.Probe or EventKind.LostRace => _draws.HasDeques && workers > 1,
            EventKind.Empty => (_draws.HasDeques && workers > 1) || _isShared,
            EventKind.Take => _draws.HasDeques || _isShared,
            EventKind.Sleep or EventKind.Wake => _trace.Inputs.Option("when-idle", "spin") == "sleep"
                || _trace.Inputs.Option("at-join", "help") == "wait",
            EventKind.Block or EventKind.Unblock or EventKind.Call => false,
            EventKind.JoinWait or EventKind.JoinPass or EventKind.Begin or EventKind.End or EventKind.Work
                or EventKind.Fork or EventKind.Stop => true,
        };
        return mayBe || Moments.Next(_trace, 0, kind) >= 0;
    }
}
