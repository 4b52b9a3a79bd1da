using System.Collections.Immutable;
using System.Globalization;
using Rookery.Traces.Replaying;

namespace Rookery.Traces.Narration;

/// <summary>The catalogue of English sentences.</summary>
/// <remarks>
/// One method a kind of event, in the order of <see cref="EventKind"/>; below them the titles, the descriptions of stages, and
/// the small words. Where facts are unknown a sentence gets shorter; it never guesses. One long file on purpose: a
/// translator sees every sentence there is.
/// </remarks>
internal sealed class Sentences : ISentences
{
    public string UnnamedTask => "a task that the trace does not name";

    public string Sentence(EventFacts facts)
    {
        string text = facts.Kind switch
        {
            EventKind.Begin => Begin(facts),
            EventKind.End => End(facts),
            EventKind.Work => Work(facts),
            EventKind.Fork => Fork(facts),
            EventKind.Call => Call(facts),
            EventKind.Take => Take(facts),
            EventKind.Probe => Probe(facts),
            EventKind.Steal => Steal(facts),
            EventKind.LostRace => LostRace(facts),
            EventKind.Empty => Empty(facts),
            EventKind.JoinWait => JoinWait(facts),
            EventKind.JoinPass => JoinPass(facts),
            EventKind.Block => Block(facts),
            EventKind.Unblock => Unblock(facts),
            EventKind.Sleep => Sleep(facts),
            EventKind.Wake => Wake(facts),
            EventKind.Stop => Stop(facts),
        };
        return Capitalised(text);
    }

    private static string Begin(EventFacts f)
    {
        string forked = $"{f.OtherTask} forked it{Before(f.Ago, f)}{At(f.Line)}";
        return f.Arrival switch
        {
            Arrival.Start => $"{Who(f)} begins {f.Task}, the start of the program.",
            Arrival.Called => $"{Who(f)} goes straight into {f.Task}: a call runs on the worker of its caller, "
                + $"and {f.OtherTask} goes on when it has ended.",
            Arrival.RunsFirst => $"{Who(f)} begins {f.Task} at once: a forked child runs first here, "
                + $"and the rest of {f.OtherTask} is queued.",
            Arrival.Taken => $"{Who(f)} begins {f.Task}, which it has just taken; {forked}{OnAnother(f)}.",
            Arrival.Stolen => $"{Who(f)} begins {f.Task}, which it has just stolen from {Worker(f.OtherWorker)}; {forked}.",
            Arrival.OwnThread => $"{Who(f)}, a thread of its own for {f.Task}, begins it; {forked}{OnAnother(f)}.",
            Arrival.Unknown => $"{Who(f)} begins {f.Task}.",
        };
    }

    private static string End(EventFacts f)
    {
        if (f.IsRoot)
            return $"{f.Task} ends on {Who(f)}, and with it the program, at time {Number(f.Time)}.";
        if (f.IsCalled)
            return $"{f.Task} ends and returns to its caller: {Who(f)} goes on with {f.OtherTask}.";
        if (!f.WasWaiting)
            return $"{f.Task} ends on {Who(f)}. {Capitalised(AfterEnd(f))}";
        if (f.Unfinished > 0)
            return $"{f.Task} ends on {Who(f)}. {f.OtherTask} still waits for {Count(f.Unfinished, "more child", "more children")}.";
        string last = $"{f.Task} ends, the last child that {f.OtherTask} waited for";
        if (f.Options.Suspends)
            return $"{last}: so {Who(f)} goes on with {f.OtherTask}.";
        return f.OtherWorker == f.Worker
            ? $"{last}. {f.OtherTask} can now pass its join on this worker."
            : $"{last}. {f.OtherTask} can now pass its join on {Worker(f.OtherWorker)}.";
    }

    // What is left for a worker whose task has ended.
    private static string AfterEnd(EventFacts f)
    {
        if (f.WaitingTask.Length > 0)
            return $"{f.WaitingTask} waits below it on this worker.";
        if (f.Options.IsThreads)
            return "Its thread ends with it.";
        string queue = f.Options.IsShared ? "the shared queue" : "its deque";
        return f.After > 0
            ? $"{Who(f)} can go on with {queue}, which holds {Count(f.After, "task", "tasks")}."
            : $"{Who(f)} has nothing left, and {queue} is empty.";
    }

    private static string Work(EventFacts f)
    {
        string verb = f.Former == EventKind.Stop ? "goes on computing" : "computes";
        string length = f.Length is { } units ? $" for {Time(units, f)}" : "";
        return $"{Who(f)} {verb}{length}: {f.Task}{At(f.Line)}.";
    }

    private static string Fork(EventFacts f)
    {
        string fork = $"{f.Task} forks {f.OtherTask}{At(f.Line)}.";
        string queue = f.Options.IsShared ? "into the shared queue" : "at the bottom of its deque";
        string size = f.After == 1 ? "" : $", which now holds {Count(f.After, "task", "tasks")}";
        if (f.Options.IsThreads)
            return $"{fork} The child gets a thread of its own, and the parent goes on.";
        if (!f.Options.ChildFirst)
            return $"{fork} {Capitalised(Who(f))} goes on with the parent and puts the child {queue}{size}.";
        string finder = f.WorkerCount == 1 ? "" : ", where another worker may find it,";
        return $"{fork} The child runs first: {Who(f)} puts the rest of the parent {queue}{finder} and turns to the child.";
    }

    private static string Call(EventFacts f) =>
        $"{f.Task} calls {f.OtherTask}{At(f.Line)}: it runs on this worker now, and {f.Task} goes on when it has ended.";

    private static string Take(EventFacts f)
    {
        string what = Rest(f);
        string left = f.After switch
        {
            0 => "Nothing is left there.",
            1 => "1 task is left there.",
            _ => $"{Number(f.After)} tasks are left there.",
        };
        string waited = f.Waited is { } length ? $"; it waited {Time(length, f)}" : "";
        if (f.Options.IsShared)
            return $"{Who(f)} takes {what} from the shared queue{Place(f, f.Options.OwnerTakesOldest)}{waited}. {left}";
        if (f.Options.OwnerTakesOldest)
            return f.WasOldest
                ? $"{Who(f)} takes {what} from the top of its deque{Place(f, true)}{waited}. {left}"
                : $"{Who(f)} takes {what}.";
        if (!f.WasNewest)
            return $"{Who(f)} takes {what}.";
        if (!f.IsOwnFork)
            return $"{Who(f)} takes {what} from the bottom of its deque{Place(f, false)}{waited}. {left}";
        return f.HasBegun
            ? $"{Who(f)} takes {what} back from the bottom of its deque: nobody has come for it. {left}"
            : $"{Who(f)} takes {what} from the bottom of its deque: the task that it queued last, "
                + $"whose data is likely still in its cache. {left}";
    }

    private static string Probe(EventFacts f)
    {
        string victim = $"{Worker(f.OtherWorker)}{Why(f.Reason)}";
        string end = f.Options.ThiefTakesNewest ? "at the bottom" : "at the top";
        string sight = f.Task.Length == 0 ? "an empty deque" : $"{Rest(f)} {end}";
        if (f.WaitingTask.Length > 0)
            return $"While {f.WaitingTask} waits, {Who(f)} looks at {victim}, and sees {sight}.";
        if (f.FailedLooks > 0)
        {
            string failed = Count(f.FailedLooks, "look in vain", "looks in vain");
            return $"After {failed} {Who(f)} tries again: it looks at {victim}, and sees {sight}.";
        }

        string state = f.Former is null ? "has nothing to do yet" : "has nothing left";
        return $"{Who(f)} {state}. It looks at {victim}, and sees {sight}.";
    }

    private static string Why(VictimReason reason) => reason switch
    {
        VictimReason.Unknown => "",
        VictimReason.OnlyOther => ", the only other worker",
        VictimReason.Random => ", drawn at random",
        VictimReason.InTurn => ", the next in turn",
        VictimReason.Lowest => ", going through the others from the lowest number up",
        VictimReason.LastSuccess => ", where its last steal succeeded",
        VictimReason.Nearest => ", going through the others from the nearest on",
        VictimReason.Fullest => ", which has the most queued tasks",
        VictimReason.HasAwaitedChild => ", which has a child that it waits for",
    };

    private static string Steal(EventFacts f)
    {
        string callers = f.Callers switch
        {
            0 => "",
            1 => " Its caller moves with it.",
            _ => $" Its {Number(f.Callers)} callers move with it.",
        };
        string share = f.Work > 0 && f.AllWork > 0 ? $"stands for {Share(f.Work, f.AllWork)}" : "";
        if (f.StealIndex > 0)
        {
            string tail = share.Length > 0 ? $"; it {share}" : "";
            return $"With the same steal {Who(f)} moves {Rest(f)} to the bottom of its own deque{tail}.{callers}";
        }

        string from = Worker(f.OtherWorker);
        if (f.StealCount > 1)
        {
            string amount = f.Options.StealsHalf ? $"half of what {from} has queued" : $"several tasks from {from}";
            string tail = share.Length > 0 ? $", which {share}" : "";
            return $"{Who(f)} takes {amount}: {Number(f.StealCount)} of {Number(f.Before)} tasks. "
                + $"It goes on with {Rest(f)}{tail}.{callers}";
        }

        string waited = f.Waited is { } length ? $"has waited {Time(length, f)}" : "";
        string both = string.Join(" and ", new[] { waited, share }.Where(part => part.Length > 0));
        return $"{Who(f)} takes {Rest(f)} from {from}{Place(f, !f.Options.ThiefTakesNewest)}."
            + (both.Length > 0 ? $" It {both}." : "") + callers;
    }

    private static string LostRace(EventFacts f)
    {
        string ago = f.Ago is > 0 and { } length ? $"{Time(length, f)} ago" : "at this very time";
        if (f.Victim == f.Worker)
        {
            return f.OtherWorker < 0
                ? $"{Who(f)} was about to take {f.Task}, but it is no longer where it was."
                : $"{Who(f)} loses the race for {f.Task} in its own deque: {Worker(f.OtherWorker)} stole it {ago}.";
        }

        string again = f.FailedLooks > 1 ? $" That is its {Ordinal(f.FailedLooks)} look in vain in a row." : "";
        if (f.OtherWorker < 0)
            return $"{Who(f)} comes too late: {f.Task} is no longer where it saw it at {Worker(f.Victim)}.{again}";
        return f.OtherWorker == f.Victim
            ? $"{Who(f)} comes too late: {Worker(f.Victim)} took {f.Task} itself {ago}.{again}"
            : $"{Who(f)} comes too late: {Worker(f.OtherWorker)} stole {f.Task} from {Worker(f.Victim)} {ago}.{again}";
    }

    private static string Empty(EventFacts f)
    {
        if (f.OtherWorker < 0)
            return $"{Who(f)} finds the shared queue empty, and watches it from now on.";
        string which = f.FailedLooks > 1 ? $", its {Ordinal(f.FailedLooks)} look in vain in a row" : "";
        string next = (f.Following, f.Options.WhenIdle) switch
        {
            (EventKind.Probe, "spin") => " It looks again at once.",
            (EventKind.Probe, "back-off") => " It pauses before it looks again, longer after each failure.",
            (EventKind.Probe, "sleep") when f.Patience > 0 =>
                $" It goes to sleep only after {Count(f.Patience, "look", "looks")} in vain.",
            _ => "",
        };
        return $"{Who(f)} finds nothing at {Worker(f.OtherWorker)}{which}.{next}";
    }

    private static string JoinWait(EventFacts f)
    {
        string child = f.OtherTask.Length > 0 ? f.OtherTask : "a child";
        string where = f.AwaitedHasBegun ? $"which {Worker(f.OtherWorker)} began" : "which nobody has begun";
        string wait = f.Unfinished > 1
            ? $"{f.Task} must wait at its join{At(f.Line)}: {Number(f.Unfinished)} of its children have not ended, "
                + $"among them {child}, {where}."
            : $"{f.Task} must wait at its join{At(f.Line)}: {child}, {where}, has not ended.";
        string plan = f.Options.AtJoin switch
        {
            "help" when f.Options.IsShared => $" Meanwhile {Who(f)} takes what it finds in the shared queue.",
            "help" when f.After > 0 => $" Meanwhile {Who(f)} runs tasks of its own deque, which holds {Number(f.After)}.",
            "help" => $" Meanwhile {Who(f)} looks for a task to steal.",
            "leapfrog" => $" Meanwhile {Who(f)} runs only what helps {f.Task}: children queued here, or tasks of workers "
                + "that have one.",
            "wait" => $" {Capitalised(Who(f))} does nothing until then.",
            "suspend" => $" It is put aside for whoever ends its last child, and {Who(f)} is free for other tasks.",
            _ => "",
        };
        return wait + plan;
    }

    private static string JoinPass(EventFacts f)
    {
        string pass = $"{f.Task} passes its join{At(f.Line)}";
        if (f.Unfinished > 0 || f.Created == 0)
            return $"{pass} on {Who(f)}.";
        if (!f.WasWaiting)
            return $"{pass} at once: all that it forked has ended already.";
        string waited = f.Waited is { } length ? $" after waiting {Time(length, f)}" : "";
        if (f.OtherTask.Length == 0)
            return $"{pass} on {Who(f)}{waited}: all that it forked has ended.";
        return f.OtherWorker == f.Worker
            ? $"{pass} on {Who(f)}{waited}: its last child, {f.OtherTask}, has ended here."
            : $"{pass} on {Who(f)}{waited}: its last child, {f.OtherTask}, has ended on {Worker(f.OtherWorker)}.";
    }

    private static string Block(EventFacts f)
    {
        string length = f.Length is { } units ? $" for {Time(units, f)}" : "";
        return $"{f.Task} waits{length} for something outside the processor{At(f.Line)}. "
            + $"{Capitalised(Who(f))} is held by it, but uses no core.";
    }

    private static string Unblock(EventFacts f)
    {
        string waited = f.Waited is { } length ? $" after {Time(length, f)}" : "";
        return $"What {f.Task} waited for has come{waited}: {Who(f)} goes on with it.";
    }

    private static string Sleep(EventFacts f)
    {
        if (f.Former == EventKind.JoinWait && f.WaitingTask.Length > 0)
            return $"{Who(f)} sleeps until the children of {f.WaitingTask} have ended, and gives up its core.";
        if (f.Options.IsShared)
            return $"The shared queue stays empty: {Who(f)} goes to sleep and gives up its core.";
        return f.FailedLooks > 0
            ? $"{Who(f)} has looked in vain {Times(f.FailedLooks)} in a row: it goes to sleep and gives up its core."
            : $"{Who(f)} goes to sleep and gives up its core.";
    }

    private static string Wake(EventFacts f)
    {
        string slept = f.Waited is { } length ? $", which had slept {Time(length, f)}" : "";
        string delay = f.Ago is { } ago ? $" From there until it ran it took {Time(ago, f)}." : "";
        return f.WakeReason switch
        {
            WakeReason.Fork => $"{Worker(f.OtherWorker)} forked {f.OtherTask}{At(f.Line)} and woke {Who(f)}{slept}.{delay}",
            WakeReason.ChildrenEnded => $"{f.OtherTask} ended on {Worker(f.OtherWorker)}, the last child that "
                + $"{f.WaitingTask} waits for; this woke {Who(f)}{slept}.{delay}",
            WakeReason.Unknown when f.OtherWorker >= 0 => $"{Worker(f.OtherWorker)} woke {Who(f)}{slept}.",
            WakeReason.Unknown => f.Waited is { } time ? $"{Who(f)} wakes after {Time(time, f)}." : $"{Who(f)} wakes.",
        };
    }

    private static string Stop(EventFacts f)
    {
        if (!f.IsLast)
        {
            return f.Task.Length > 0
                ? $"The time slice of {Who(f)} is over: it leaves its core in the middle of {f.Task}, and goes on later."
                : $"The time slice of {Who(f)} is over: it leaves its core to another worker.";
        }

        if (f.Starved)
        {
            return f.WaitingTask.Length > 0
                ? $"The run has starved: {Who(f)} waits for the children of {f.WaitingTask}, and no worker can go on."
                : $"The run has starved: {Who(f)} stops, since no worker can go on.";
        }

        return f.Options.IsThreads && f.Former == EventKind.End
            ? $"The task of {Who(f)} has ended, and its thread with it."
            : $"The run is over: {Who(f)} stops.";
    }

    public string Title(EventFacts facts)
    {
        EventFacts f = facts;
        return f.Kind switch
        {
            EventKind.Begin => $"{Who(f)} begins {f.Task}",
            EventKind.End => $"{Who(f)} ends {f.Task}",
            EventKind.Work => $"{Who(f)} computes for {f.Task}",
            EventKind.Fork => $"{Who(f)} forks {f.OtherTask}",
            EventKind.Call => $"{Who(f)} calls {f.OtherTask}",
            EventKind.Take => $"{Who(f)} takes {Rest(f)}",
            EventKind.Probe => $"{Who(f)} looks at {Worker(f.OtherWorker)}",
            EventKind.Steal => $"{Who(f)} steals {Rest(f)}",
            EventKind.LostRace => $"{Who(f)} loses the race for {f.Task}",
            EventKind.Empty when f.OtherWorker < 0 => $"{Who(f)} finds the shared queue empty",
            EventKind.Empty => $"{Who(f)} finds nothing at {Worker(f.OtherWorker)}",
            EventKind.JoinWait => $"{f.Task} waits at its join on {Who(f)}",
            EventKind.JoinPass => $"{f.Task} passes its join on {Who(f)}",
            EventKind.Block => $"{f.Task} blocks {Who(f)}",
            EventKind.Unblock => $"{f.Task} goes on on {Who(f)}",
            EventKind.Sleep => $"{Who(f)} goes to sleep",
            EventKind.Wake => $"{Who(f)} wakes",
            EventKind.Stop => $"{Who(f)} stops",
        };
    }

    public string Moment(int step, long time, string timeUnit) =>
        $"After {Count(step, "event", "events")}, at time {Number(time)} ({timeUnit}):";

    public string SharedQueue(ImmutableArray<string> tasks, int count) => count == 0
        ? "The shared queue is empty."
        : $"The shared queue, from the oldest on: {List(tasks, count)}.";

    public string MoreWorkers(int count) => $"{Count(count, "more worker is", "more workers are")} not described.";

    string ISentences.Worker(WorkerFacts facts)
    {
        string who = Capitalised(Worker(facts.Worker));
        if (!facts.HasStarted)
            return $"{who} has not started.";
        bool isIdle = facts.Stretch is Stretch.Searching or Stretch.Asleep;
        string below = facts.BelowCount > 0 ? $"; below it {(facts.BelowCount == 1 ? "waits" : "wait")} "
            + List(facts.Below, facts.BelowCount) : "";
        string waiting = facts.Task.Length == 0 ? "" : $", while {facts.Task}{At(facts.Line)} waits on it{below}";
        string text = $"{who} {Doing(facts)}{(isIdle ? waiting : below)}.";
        if (!facts.HasDeque)
            return text;
        return facts.DequeCount == 0
            ? $"{text} Its deque is empty."
            : $"{text} Its deque, from top to bottom: {List(facts.Deque, facts.DequeCount)}.";
    }

    private static string Doing(WorkerFacts facts)
    {
        bool hasTask = facts.Task.Length > 0;
        string task = $"{facts.Task}{At(facts.Line)}";
        return facts.Stretch switch
        {
            Stretch.Working => hasTask ? $"computes for {task}" : "computes",
            Stretch.Scheduling when facts.LastEvent is EventKind.Take or EventKind.Steal && hasTask => $"is getting {task}",
            Stretch.Scheduling => hasTask ? $"is at {task}" : "is between two tasks",
            Stretch.Searching => "looks for something to do",
            Stretch.Blocked => hasTask ? $"is held by {task}, which waits for something outside" : "is held",
            Stretch.Asleep => "is asleep",
            Stretch.Off => hasTask ? $"is off its core in the middle of {task}" : "has stopped",
        };
    }

    private static string List(ImmutableArray<string> items, int count)
    {
        string more = count > items.Length ? $" and {Number(count - items.Length)} more" : "";
        return string.Join(", ", items) + more;
    }

    private static string Who(EventFacts f) => Worker(f.Worker);

    private static string Worker(int worker) => worker < 0 ? "an unknown worker" : $"worker {Plain(worker)}";

    private static string OnAnother(EventFacts f) =>
        f.OtherWorker >= 0 && f.OtherWorker != f.Worker ? $" on {Worker(f.OtherWorker)}" : "";

    // A task that has begun leaves only its rest to be moved.
    private static string Rest(EventFacts f) => f.HasBegun ? $"the rest of {f.Task}" : f.Task;

    // Where the task stood in its queue; nothing when it did not stand where the options say.
    private static string Place(EventFacts f, bool takesOldest)
    {
        bool isThere = takesOldest ? f.WasOldest : f.WasNewest;
        if (!isThere || f.Before == 0)
            return "";
        if (f.Before == 1)
            return ": the only task there";
        return $": the {(takesOldest ? "oldest" : "newest")} of {Number(f.Before)} tasks there";
    }

    private static string At(int line) => line > 0 ? $" (line {Plain(line)})" : "";

    private static string Before(long? ago, EventFacts f) => ago is { } length ? $" {Time(length, f)} before" : "";

    private static string Time(long length, EventFacts f) =>
        length == 1 && f.TimeUnit == "units" ? "1 unit" : $"{Number(length)} {f.TimeUnit}";

    private static string Count(int count, string one, string many) => count == 1 ? $"1 {one}" : $"{Number(count)} {many}";

    private static string Times(int count) => count switch
    {
        1 => "once",
        2 => "twice",
        _ => $"{Number(count)} times",
    };

    private static string Ordinal(int number) => (number % 100, number % 10) switch
    {
        ( < 11 or > 13, 1) => $"{Number(number)}st",
        ( < 11 or > 13, 2) => $"{Number(number)}nd",
        ( < 11 or > 13, 3) => $"{Number(number)}rd",
        _ => $"{Number(number)}th",
    };

    // Rounded to whole percent; never 0 or 100 unless it is exactly that.
    private static string Share(long part, long whole)
    {
        if (part >= whole)
            return "all of the work";
        Int128 percent = (((Int128)part * 200) + whole) / ((Int128)whole * 2);
        if (percent == 0)
            return "less than 1 % of all the work";
        return percent == 100
            ? "more than 99 % of all the work"
            : $"{Plain((int)percent)} % of all the work";
    }

    private static string Number(long number) => number.ToString("N0", CultureInfo.InvariantCulture);

    private static string Plain(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static string Capitalised(string text) =>
        text.StartsWith("worker ", StringComparison.Ordinal) || text.StartsWith("an unknown", StringComparison.Ordinal)
            || text.StartsWith("a task", StringComparison.Ordinal)
            ? char.ToUpperInvariant(text[0]) + text[1..]
            : text;
}
