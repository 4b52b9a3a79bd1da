using Rookery.Checking.Words;
using Rookery.Traces.Replaying;

namespace Rookery.Drawing;

/// <summary>The words in a figure: one catalogue a language.</summary>
/// <remarks>
/// Only what the views themselves say; names of programs, tasks and series come from whoever made them, and sentences
/// from the narrator. A translation is another implementation: the compiler names what it lacks. Numbers follow the
/// language. Immutable.
/// </remarks>
public abstract class DrawingWords
{
    private protected DrawingWords()
    {
    }

    /// <summary>British English; the default.</summary>
    public static DrawingWords English { get; } = new EnglishWords();

    /// <summary>German: <c>1.234,5</c> for 1,234.5.</summary>
    public static DrawingWords German { get; } = new GermanWords();

    internal string Whole(long value) => Numeral(NumberText.Whole(value));

    internal string Short(double value) => Numeral(NumberText.Short(value));

    internal string Compact(long value) => Numeral(NumberText.Compact(value));

    internal string Decimal(double value, int decimalsMax) => Numeral(NumberText.Decimal(value, decimalsMax));

    internal string Percent(double share) => Numeral(NumberText.Percent(share));

    internal string Tick(double tick, IReadOnlyList<double> ticks) => Numeral(NumberText.Tick(tick, ticks));

    /// <summary>A time with its unit.</summary>
    internal string Time(double time, string unit) => unit != "units"
        ? Numeral(TimeText.Of(time, unit))
        : time == 1 ? OneUnit : $"{Short(time)} {Unit(unit)}";

    /// <summary>A number as the language writes it.</summary>
    /// <param name="invariant">With a comma between thousands and a point before decimals.</param>
    internal abstract string Numeral(string invariant);

    /// <summary>A unit of time; one that is not ours stays as it is.</summary>
    internal abstract string Unit(string unit);

    internal abstract string OneUnit { get; }

    /// <summary>Stands in for a program without a name.</summary>
    internal abstract string ARun { get; }

    internal abstract string Worker(int worker);

    internal abstract string WorkerRange(int first, int last);

    // Workers and their deques at one step.
    internal abstract string DequeTitle(string program, string time);

    internal abstract string DequeSubtitle(int step, int steps, int working, int workers, int queued);

    internal abstract string WorkerSentence(int worker, string state, string task, string? deque);

    internal abstract string MoreWorkersSentence(int count);

    internal abstract string SharedQueueSentence(string tasks);

    internal abstract string TaskWithWork(string task, double work);

    internal abstract string FromTop(string tasks, int more);

    internal abstract string State(Stretch stretch, bool isAtJoin);

    internal abstract string HiddenWorkers(int count, string states, int queued);

    /// <summary>Headings of the workers' column, from the longest on.</summary>
    internal abstract ReadOnlySpan<string> WorkerHeadings { get; }

    /// <summary>Headings of the deques' column, from the longest on.</summary>
    internal abstract ReadOnlySpan<string> DequeHeadings { get; }

    internal abstract string NoTask { get; }

    internal abstract string Empty { get; }

    internal abstract string Top { get; }

    internal abstract string Oldest { get; }

    internal abstract string SharedQueue { get; }

    internal abstract string StolenTask { get; }

    internal abstract string OnMore(int count);

    internal abstract string OnTopOf(string tasks);

    internal abstract string OnTopOfWaiting(int count);

    internal abstract string OnWaiting(int count);

    internal abstract string AreaKey(string time);

    /// <summary>The same where the whole has no room.</summary>
    internal abstract string ShortAreaKey(string time);

    internal abstract string GoneTo(int worker);

    internal abstract string More(int count);

    // The timeline.
    internal abstract string TimelineTitle(string program, int workers);

    internal abstract string TimelineSubtitle(
        bool isStarved, string makespan, string work, int steals, string utilisation);

    internal abstract string TimelineDescription(
        string from, string to, string subtitle, string? span, string rows, int moreRows);

    internal abstract string NoEvents { get; }

    internal abstract string Computing { get; }

    internal abstract string ComputingByOrigin { get; }

    internal abstract string Scheduling { get; }

    internal abstract string Searching { get; }

    internal abstract string Blocked { get; }

    internal abstract string Asleep { get; }

    internal abstract string StealLink { get; }

    internal abstract string TimeIn(string unit);

    internal abstract string SlicesNote(int slices, int workersInRow);

    internal abstract string LinksNote(int drawn, int all);

    // The task tree.
    internal abstract string TreeTitle(string program);

    internal abstract string TreeSubtitle(long tasks, long stolen, int levels);

    internal abstract string TreeDescription(string root, string subtitle, string shares);

    internal abstract string WorkerBegan(int worker, long tasks);

    internal abstract string NoTasks { get; }

    internal abstract string HiddenTasks(long hidden, long stolen);

    internal abstract string BeganBy { get; }

    internal abstract string BeganByRepeating { get; }

    internal abstract string NeverBegan { get; }

    internal abstract string Forked { get; }

    internal abstract string Called { get; }

    internal abstract string Stolen { get; }

    internal abstract string ContinuationStolen { get; }

    // Who stole from whom.
    internal abstract string Workers(string range);

    internal abstract string MatrixTitle(string program);

    internal abstract string MatrixSubtitle(long steals, int workers, double? each);

    internal abstract string MatrixDescription(string subtitle, string rows);

    internal abstract string StoleAndLost(string worker, long stolen, long lost);

    internal abstract string GroupsNote(int workers, int groups, int inGroup);

    internal abstract string StealScale(long largest);

    internal abstract string NothingStolen { get; }

    internal abstract string NobodyToStealFrom { get; }

    internal abstract string Thief { get; }

    internal abstract string Victim { get; }

    internal abstract string Stole { get; }

    internal abstract string Lost { get; }

    // Work in stolen tasks.
    internal abstract string StolenWorkTitle(string program);

    internal abstract string StolenWorkSubtitle(int stolen, int queued, string? medianStolen, string? medianQueued);

    internal abstract string StolenWorkDescription(string subtitle, string mean, string least, string largest);

    internal abstract string NothingToCompareIn(string subtitle);

    internal abstract string WorkInTask(string unit);

    internal abstract string AllQueued { get; }

    internal abstract string StolenTasks { get; }

    internal abstract string MedianStolen { get; }

    internal abstract string MeanStolen { get; }

    // Speed-up against workers.
    internal abstract string SpeedUpTitle(string program);

    internal abstract string SpeedUpSubtitle(long work, long? span, double parallelism);

    internal abstract string SpeedUpOn(double speedUp, int workers);

    internal abstract string MedianSpeedUps(string series, string medians);

    /// <summary>Stands between numbers in a list.</summary>
    internal abstract string ListMark { get; }

    internal abstract string DroppedRuns(int count);

    internal abstract string RunsWithoutTime(int count);

    internal abstract string NoSpeedUp { get; }

    internal abstract string WorkersAxis { get; }

    internal abstract string SpeedUpAxis { get; }

    internal abstract string GreedyRange { get; }

    internal abstract string Linear { get; }

    internal abstract string GreedyLeast { get; }

    // Treatments side by side.
    internal abstract string MeanOf(string treatment, ComparisonGroup group);

    internal abstract string AndMore(int count);

    internal abstract string NothingToCompare { get; }

    internal abstract string MeanAndInterval { get; }

    internal abstract string RunsOfOneSeed { get; }

    // An execution of a deque algorithm, whole and at one step.

    /// <summary>Says steps and what an execution shows.</summary>
    internal abstract CheckerWords Checker { get; }

    internal abstract string AnExecution { get; }

    internal abstract string NothingHappened { get; }

    internal abstract string FailsAtOnce { get; }

    internal abstract string FirstStepsLeftOut(int count);

    internal abstract string MorePlacesChange(int count);

    internal abstract string Thread(string name);

    internal abstract string BufferOf(string thread);

    internal abstract string StoreBufferOf(string thread);

    internal abstract string HasEnded { get; }

    internal abstract string In(string operation);

    internal abstract string Next(string operation);

    internal abstract string Waits(string writes);

    internal abstract string MayRead(string choices);

    /// <summary>Stands between values of which one is read.</summary>
    internal abstract string OrMark { get; }

    internal abstract string Memory { get; }

    internal abstract string MemoryStays { get; }
}
