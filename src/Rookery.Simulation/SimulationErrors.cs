using System.Collections.Immutable;
using System.Globalization;
using Rookery.Notation;

namespace Rookery.Simulation;

/// <summary>All that can be wrong with a run's inputs, in one place. Codes <c>SM001</c> and up are stable.</summary>
internal static class SimulationErrors
{
    public static Diagnostic UnknownOption(string option) => new(
        "SM001", default, $"There is no scheduler option '{option}'.",
        $"Options are {string.Join(", ", Scheduler.OptionNames)}.");

    public static Diagnostic UnknownWord(string option, string word, ImmutableArray<string> words) => new(
        "SM002", default, $"'{word}' is no value of {option}.", $"Use one of {string.Join(", ", words)}.");

    public static Diagnostic BadPatience(string word) => new(
        "SM003", default, $"The patience '{word}' is not a whole number of at least 1.",
        "Say how many looks may fail in a row before a worker sleeps, such as 8.");

    public static Diagnostic NoVictims(string queues) => new(
        "SM004", default,
        $"With queues {queues} no worker has a deque, so there is no victim to choose and nothing to steal.",
        "Leave out thief-takes, victim and amount, or use queues per-worker.");

    public static Diagnostic LeapfrogNeedsDeques(string queues) => new(
        "SM005", default,
        $"Leapfrogging steals from the deque of the worker that has the awaited child; queues {queues} has none.",
        "Use queues per-worker, or at-join help.");

    public static Diagnostic ThreadsQueueNothing() => new(
        "SM006", default, "With a thread for each task nothing is queued, so a parent's continuation cannot be.",
        "Use fork-runs parent.");

    public static Diagnostic ThreadsWait(string atJoin) => new(
        "SM007", default,
        $"A thread that has one task only can do nothing but wait at a join, so at-join {atJoin} makes no sense.",
        "Use at-join wait, or queues per-worker.");

    public static Diagnostic ThreadsAreNeverIdle() => new(
        "SM008", default, "A thread for each task ends with its task: it takes nothing and is never idle.",
        "Leave out owner-takes, when-idle, patience and wake.");

    public static Diagnostic LeapfrogNeedsNewest() => new(
        "SM009", default, "Leapfrogging runs the waiting task's own children first, which are the newest in the deque.",
        "Use owner-takes newest, or at-join help.");

    public static Diagnostic BadWorkers(long workers, long most) => new(
        "SM010", default, string.Create(CultureInfo.InvariantCulture, $"A run cannot have {workers} workers."),
        string.Create(CultureInfo.InvariantCulture, $"Use 1 to {most}."));

    public static Diagnostic BadCost(string name, long value, long least) => new(
        "SM011", default, string.Create(CultureInfo.InvariantCulture, $"The machine's {name} cannot be {value}."),
        string.Create(CultureInfo.InvariantCulture, $"Use {least} or more, up to 10^12."));

    public static Diagnostic UnknownCost(string name) => new(
        "SM012", default, $"There is no machine cost '{name}'.", $"Costs are {string.Join(", ", Machine.CostNames)}.");

    public static Diagnostic UnknownName(string kind, string name, IEnumerable<string> names) => new(
        "SM013", default, $"There is no {kind} '{name}'.", $"Use one of {string.Join(", ", names)}.");

    public static Diagnostic NoChoice(string text) => new(
        "SM014", default, $"'{text}' is no choice.", "Write a name, an equals sign and a value, as in victim=lowest.");

    public static Diagnostic BadChoice(string name, string word, long least, long most) => new(
        "SM015", default, $"'{word}' is no value of {name}.", $"Use a whole number from {least} to {most}.");

    public static Diagnostic TooManyTasks(long most) => new(
        "SM020", default,
        string.Create(CultureInfo.InvariantCulture, $"The run has more than {most} tasks, the limit on tasks."),
        "Make the grain larger, or raise the limit with --limit-tasks.", true);

    public static Diagnostic TooManyEvents(long most) => new(
        "SM021", default,
        string.Create(CultureInfo.InvariantCulture, $"The run has more than {most} events, the limit on events."),
        "Make the program smaller, or raise the limit with --limit-events.", true);

    public static Diagnostic TooManyThreads(long most) => new(
        "SM022", default,
        string.Create(CultureInfo.InvariantCulture, $"The run has more than {most} threads, the limit on threads."),
        "Make the grain larger: a thread for each task needs many, which is the point of a pool.", true);

    public static Diagnostic ClockOverflow() => new(
        "SM023", default, "The run's clock passes 4 * 10^18 units.",
        "Make the work or the machine's costs smaller; the unit of time is yours to choose.", true);
}
