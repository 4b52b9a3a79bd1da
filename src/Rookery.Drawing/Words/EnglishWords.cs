using System.Globalization;
using Rookery.Checking.Words;
using Rookery.Traces.Replaying;

namespace Rookery.Drawing;

/// <summary>The catalogue of English words in figures.</summary>
internal sealed class EnglishWords : DrawingWords
{
    private static readonly string[] WorkerTexts = ["worker and its current task", "worker, its task", "worker"];

    private static readonly string[] DequeTexts =
        ["deque, from bottom (owner's end) to top (thieves' end)", "deque, from bottom to top", "deque"];

    internal override string Numeral(string invariant) => invariant;

    internal override string Unit(string unit) => unit;

    internal override string OneUnit => "1 unit";

    internal override string ARun => "a run";

    internal override string Worker(int worker) => string.Create(CultureInfo.InvariantCulture, $"worker {worker}");

    internal override string WorkerRange(int first, int last) =>
        string.Create(CultureInfo.InvariantCulture, $"workers {first}–{last}");

    internal override string DequeTitle(string program, string time) => $"{program} at {time}";

    internal override string DequeSubtitle(int step, int steps, int working, int workers, int queued) =>
        $"after step {Whole(step)} of {Whole(steps)}: {Whole(working)} of {Count(workers, "worker")} computing, "
            + $"{Count(queued, "task")} queued";

    internal override string WorkerSentence(int worker, string state, string task, string? deque)
    {
        var current = task.Length > 0 ? $", with {task}" : "";
        var queue = deque is null ? "" : $"; deque {deque}";
        return string.Create(CultureInfo.InvariantCulture, $"Worker {worker}: {state}{current}{queue}.");
    }

    internal override string MoreWorkersSentence(int count) => $"{Count(count, "more worker")}.";

    internal override string SharedQueueSentence(string tasks) => $"Queue shared by all: {tasks}.";

    internal override string TaskWithWork(string task, double work) => $"{task} with work {Short(work)}";

    internal override string FromTop(string tasks, int more) =>
        $"from top {tasks}{(more > 0 ? $" and {Whole(more)} more" : "")}";

    internal override string State(Stretch stretch, bool isAtJoin) => stretch switch
    {
        Stretch.Working => Computing,
        Stretch.Searching => isAtJoin ? "at a join" : Searching,
        Stretch.Blocked => Blocked,
        Stretch.Asleep => Asleep,
        Stretch.Off => "off",
        Stretch.Scheduling => Scheduling,
    };

    internal override string HiddenWorkers(int count, string states, int queued) =>
        $"+{Count(count, "more worker")}: {states}; {Count(queued, "queued task")} in their deques";

    internal override ReadOnlySpan<string> WorkerHeadings => WorkerTexts;

    internal override ReadOnlySpan<string> DequeHeadings => DequeTexts;

    internal override string NoTask => "no task";

    internal override string Empty => "empty";

    internal override string Top => "top";

    internal override string Oldest => "oldest";

    internal override string SharedQueue => "queue shared by all";

    internal override string StolenTask => "the stolen task";

    internal override string OnMore(int count) => $"on {Whole(count)} more";

    internal override string OnTopOf(string tasks) => $"on top of {tasks}";

    internal override string OnTopOfWaiting(int count) => $"on top of {Count(count, "waiting task")}";

    internal override string OnWaiting(int count) => $"on {Count(count, "waiting task")}";

    internal override string AreaKey(string time) => $"this area: {time} of work that a queued task still contains";

    internal override string ShortAreaKey(string time) => $"this area: {time} of work";

    internal override string GoneTo(int worker) => string.Create(CultureInfo.InvariantCulture, $"gone to {worker}");

    internal override string More(int count) => $"+{Compact(count)} more";

    internal override string TimelineTitle(string program, int workers) =>
        $"{program} on {Count(workers, "worker")}: who did what, and when";

    internal override string TimelineSubtitle(
        bool isStarved, string makespan, string work, int steals, string utilisation) =>
        $"{(isStarved ? "starved after" : "makespan")} {makespan}, work {work}, {Count(steals, "steal")}, "
            + $"utilisation {utilisation}";

    internal override string TimelineDescription(
        string from, string to, string subtitle, string? span, string rows, int moreRows)
    {
        var line = span is null ? "" : $" Span {span}.";
        var more = moreRows > 0 ? $", {Whole(moreRows)} more" : "";
        return $"A bar for each worker from {from} to {to}; {subtitle}.{line} Time spent computing: {rows}{more}.";
    }

    internal override string NoEvents => "The run has no events.";

    internal override string Computing => "computing";

    internal override string ComputingByOrigin => "computing, numbered by whose work it was";

    internal override string Scheduling => "scheduling";

    internal override string Searching => "searching";

    internal override string Blocked => "blocked";

    internal override string Asleep => "asleep";

    internal override string StealLink => "steal, victim to thief";

    internal override string TimeIn(string unit) => $"time in {unit}";

    internal override string SlicesNote(int slices, int workersInRow)
    {
        var rows = workersInRow > 1
            ? string.Create(CultureInfo.InvariantCulture, $" by up to {workersInRow} workers together")
            : "";
        return $"Too much for single bars: a row shows {Whole(slices)} slices of time, and by height what share of "
            + $"each slice was spent how{rows}.";
    }

    internal override string LinksNote(int drawn, int all) =>
        $"{Whole(drawn)} of {Whole(all)} steals are drawn: "
            + "those between different rows that stand clear of the one before.";

    internal override string TreeTitle(string program) => $"{program}: which worker ran which task";

    internal override string TreeSubtitle(long tasks, long stolen, int levels)
    {
        var share = stolen == 0 ? "" : $", {Percent(stolen / (double)tasks)}";
        return $"{Count(tasks, "task")}, {Whole(stolen)} of them stolen{share}; deepest level {Whole(levels)}";
    }

    internal override string TreeDescription(string root, string subtitle, string shares) =>
        $"Tree below {root}: {subtitle}. In the whole run {shares}.";

    internal override string WorkerBegan(int worker, long tasks) => $"{Worker(worker)} began {Whole(tasks)}";

    internal override string NoTasks => "The run has no tasks.";

    internal override string HiddenTasks(long hidden, long stolen) =>
        $"+n: so many tasks are not drawn, {Whole(hidden)} in all, {Whole(stolen)} of them "
            + "stolen. The largest parts are opened first.";

    internal override string BeganBy => "worker that began the task";

    internal override string BeganByRepeating => "number: worker that began the task; paints repeat";

    internal override string NeverBegan => "never began";

    internal override string Forked => "forked";

    internal override string Called => "called";

    internal override string Stolen => "stolen";

    internal override string ContinuationStolen => "its continuation was stolen";

    internal override string Workers(string range) => $"workers {range}";

    internal override string MatrixTitle(string program) => $"{program}: who stole from whom";

    internal override string MatrixSubtitle(long steals, int workers, double? each) =>
        $"{Count(steals, "steal")} among {Count(workers, "worker")}"
            + (each is { } even ? $": {Short(even)} for each pair if all were alike" : "");

    internal override string MatrixDescription(string subtitle, string rows) =>
        $"{subtitle}. Worker by worker: {rows}.";

    internal override string StoleAndLost(string worker, long stolen, long lost) =>
        $"{worker} stole {Whole(stolen)} and lost {Whole(lost)}";

    internal override string GroupsNote(int workers, int groups, int inGroup) =>
        $"{Whole(workers)} workers in {Whole(groups)} groups of up to {Whole(inGroup)}; "
            + "steals within a group are on the diagonal.";

    internal override string StealScale(long largest) => largest == 1 ? "1 steal" : $"1 to {Short(largest)} steals";

    internal override string NothingStolen => "Nothing was stolen.";

    internal override string NobodyToStealFrom => "One worker has nobody to steal from.";

    internal override string Thief => "thief";

    internal override string Victim => "victim";

    internal override string Stole => "stole";

    internal override string Lost => "lost";

    internal override string StolenWorkTitle(string program) => $"{program}: how much work a steal moves";

    internal override string StolenWorkSubtitle(int stolen, int queued, string? medianStolen, string? medianQueued) =>
        medianStolen is null
            ? $"{Count(stolen, "task")} stolen of {Count(queued, "queued task")}"
            : $"{Whole(stolen)} stolen of {Count(queued, "queued task")}; median work {medianStolen} when stolen, "
                + $"{medianQueued} when queued";

    internal override string StolenWorkDescription(string subtitle, string mean, string least, string largest) =>
        $"{subtitle}. Work in stolen tasks: mean {mean}, least {least}, largest {largest}.";

    internal override string NothingToCompareIn(string subtitle) => $"{subtitle}: nothing to compare.";

    internal override string WorkInTask(string unit) => $"work that the task contains, in {unit}";

    internal override string AllQueued => "all queued tasks, share of them";

    internal override string StolenTasks => "stolen tasks, share and number";

    internal override string MedianStolen => "median stolen";

    internal override string MeanStolen => "mean stolen";

    internal override string SpeedUpTitle(string program) => $"{program}: speed-up against workers";

    internal override string SpeedUpSubtitle(long work, long? span, double parallelism) =>
        $"work T1 = {Short(work)}"
            + (span is { } length ? $", span Tinf = {Short(length)}, parallelism T1/Tinf = {Short(parallelism)}" : "");

    internal override string SpeedUpOn(double speedUp, int workers) => $"{Decimal(speedUp, 2)} on {Whole(workers)}";

    internal override string MedianSpeedUps(string series, string medians) => $"{series}: median speed-up {medians}.";

    internal override string ListMark => ", ";

    internal override string DroppedRuns(int count) =>
        $"{Whole(count)} runs between those of the same rank are not drawn.";

    internal override string RunsWithoutTime(int count) => $"{Count(count, "run")} that took no time: left out.";

    internal override string NoSpeedUp => "No run took any time: there is no speed-up to show.";

    internal override string WorkersAxis => "workers P";

    internal override string SpeedUpAxis => "speed-up T1/Tp";

    internal override string GreedyRange => "Where greedy schedules lie";

    internal override string Linear => "linear: P";

    internal override string GreedyLeast => "greedy at least";

    internal override string MeanOf(string treatment, ComparisonGroup group) =>
        $"{treatment}: mean {Short(group.Mean)} (interval {Short(group.Low)} to {Short(group.High)}) of "
            + Count(group.Values.Length, "run");

    internal override string AndMore(int count) => $"; and {Whole(count)} more";

    internal override string NothingToCompare => "No run came to an end: there is nothing to compare.";

    internal override string MeanAndInterval => "mean and its interval";

    internal override string RunsOfOneSeed => "Runs of one seed";

    internal override CheckerWords Checker => CheckerWords.English;

    internal override string AnExecution => "An execution";

    internal override string NothingHappened => "Nothing has happened yet.";

    internal override string FailsAtOnce => "It fails before the first step.";

    internal override string FirstStepsLeftOut(int count) => $"The first {Count(count, "step")} are left out.";

    internal override string MorePlacesChange(int count) => $"{Count(count, "more place")} of memory change.";

    internal override string Thread(string name) => $"thread {name}";

    internal override string BufferOf(string thread) => $"buffer of {thread}";

    internal override string StoreBufferOf(string thread) => $"store buffer of {thread}";

    internal override string HasEnded => "has ended";

    internal override string In(string operation) => $"in {operation}";

    internal override string Next(string operation) => $"next {operation}";

    internal override string Waits(string writes) => $"waits: {writes}";

    internal override string MayRead(string choices) => $"may read {choices}";

    internal override string OrMark => " or ";

    internal override string Memory => "memory";

    internal override string MemoryStays => "Memory does not change.";

    private string Count(long number, string one) => number == 1 ? $"1 {one}" : $"{Whole(number)} {one}s";
}
