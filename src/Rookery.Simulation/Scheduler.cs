using System.Collections.Immutable;
using System.Globalization;
using Rookery.Notation;

namespace Rookery.Simulation;

/// <summary>How workers share the tasks of a program: one value for each option of docs/scheduler.md.</summary>
/// <remarks>
/// <c>new Scheduler()</c> is plain work stealing. A scheduler may hold a combination that makes no sense (a victim
/// without deques); <see cref="Refusal"/> says so, and a run refuses to start. Immutable.
/// </remarks>
public sealed record Scheduler
{
    /// <summary>Where queued tasks wait.</summary>
    public Queues Queues { get; init; }

    /// <summary>Which task an owner takes.</summary>
    public OwnerTakes OwnerTakes { get; init; }

    /// <summary>Which task a thief takes.</summary>
    public ThiefTakes ThiefTakes { get; init; }

    /// <summary>Whom a thief looks at.</summary>
    public VictimChoice Victim { get; init; }

    /// <summary>How much a thief moves at once.</summary>
    public StealAmount Amount { get; init; }

    /// <summary>Who runs first at a fork.</summary>
    public ForkRuns ForkRuns { get; init; }

    /// <summary>What a worker does at a join whose children have not ended.</summary>
    public AtJoin AtJoin { get; init; }

    /// <summary>What a worker does when it finds nothing.</summary>
    public WhenIdle WhenIdle { get; init; }

    /// <summary>Failed looks in a row before sleeping, at least 1; null for twice the number of workers.</summary>
    public int? Patience { get; init; }

    /// <summary>Who is woken when a task is queued.</summary>
    public WakePolicy Wake { get; init; }

    /// <summary>The named sets: a word and what it stands for, in the order in which help lists them.</summary>
    public static ImmutableArray<(string Name, Scheduler Scheduler)> Named { get; } =
    [
        ("work-stealing", new()),
        ("work-first", new() { ForkRuns = ForkRuns.Child, AtJoin = AtJoin.Suspend }),
        ("shared-queue", new() { Queues = Queues.Shared, AtJoin = AtJoin.Wait }),
        ("thread-per-task", new() { Queues = Queues.None, AtJoin = AtJoin.Wait }),
        ("greedy", new() { Queues = Queues.Shared, AtJoin = AtJoin.Suspend }),
    ];

    /// <summary>The option words in the order of docs/scheduler.md.</summary>
    public static ImmutableArray<string> OptionNames { get; } =
    [
        "queues", "owner-takes", "thief-takes", "victim", "amount", "fork-runs", "at-join", "when-idle", "patience",
        "wake",
    ];

    /// <summary>The permitted words of an option, the default first; empty for <c>patience</c>, a number.</summary>
    /// <exception cref="ArgumentException">There is no such option.</exception>
    public static ImmutableArray<string> WordsOf(string option) => option switch
    {
        "queues" => [.. OptionWords<Queues>.All.Select(p => p.Word)],
        "owner-takes" => [.. OptionWords<OwnerTakes>.All.Select(p => p.Word)],
        "thief-takes" => [.. OptionWords<ThiefTakes>.All.Select(p => p.Word)],
        "victim" => [.. OptionWords<VictimChoice>.All.Select(p => p.Word)],
        "amount" => [.. OptionWords<StealAmount>.All.Select(p => p.Word)],
        "fork-runs" => [.. OptionWords<ForkRuns>.All.Select(p => p.Word)],
        "at-join" => [.. OptionWords<AtJoin>.All.Select(p => p.Word)],
        "when-idle" => [.. OptionWords<WhenIdle>.All.Select(p => p.Word)],
        "wake" => [.. OptionWords<WakePolicy>.All.Select(p => p.Word)],
        "patience" => [],
        _ => throw new ArgumentException($"There is no scheduler option '{option}'.", nameof(option)),
    };

    /// <summary>This scheduler with one option set by its words.</summary>
    /// <param name="option">One of <see cref="OptionNames"/>.</param>
    /// <param name="word">The value's word; for <c>patience</c> a whole number, at least 1.</param>
    /// <exception cref="InputException">The option or the word is unknown; the message lists what is
    /// permitted.</exception>
    public Scheduler With(string option, string word) => option switch
    {
        "queues" => this with { Queues = Parse<Queues>(option, word, OptionWords<Queues>.TryParse) },
        "owner-takes" => this with { OwnerTakes = Parse<OwnerTakes>(option, word, OptionWords<OwnerTakes>.TryParse) },
        "thief-takes" => this with { ThiefTakes = Parse<ThiefTakes>(option, word, OptionWords<ThiefTakes>.TryParse) },
        "victim" => this with { Victim = Parse<VictimChoice>(option, word, OptionWords<VictimChoice>.TryParse) },
        "amount" => this with { Amount = Parse<StealAmount>(option, word, OptionWords<StealAmount>.TryParse) },
        "fork-runs" => this with { ForkRuns = Parse<ForkRuns>(option, word, OptionWords<ForkRuns>.TryParse) },
        "at-join" => this with { AtJoin = Parse<AtJoin>(option, word, OptionWords<AtJoin>.TryParse) },
        "when-idle" => this with { WhenIdle = Parse<WhenIdle>(option, word, OptionWords<WhenIdle>.TryParse) },
        "wake" => this with { Wake = Parse<WakePolicy>(option, word, OptionWords<WakePolicy>.TryParse) },
        "patience" => this with { Patience = ParsePatience(word) },
        _ => throw new InputException(SimulationErrors.UnknownOption(option)),
    };

    /// <summary>All options by their words, as a trace carries them.</summary>
    /// <param name="workers">The number of workers, for the default of <c>patience</c>.</param>
    public ImmutableSortedDictionary<string, string> ToWords(int workers)
    {
        var words = ImmutableSortedDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        words["queues"] = OptionWords<Queues>.WordOf(Queues);
        words["owner-takes"] = OptionWords<OwnerTakes>.WordOf(OwnerTakes);
        words["thief-takes"] = OptionWords<ThiefTakes>.WordOf(ThiefTakes);
        words["victim"] = OptionWords<VictimChoice>.WordOf(Victim);
        words["amount"] = OptionWords<StealAmount>.WordOf(Amount);
        words["fork-runs"] = OptionWords<ForkRuns>.WordOf(ForkRuns);
        words["at-join"] = OptionWords<AtJoin>.WordOf(AtJoin);
        words["when-idle"] = OptionWords<WhenIdle>.WordOf(WhenIdle);
        words["patience"] = PatienceFor(workers).ToString(CultureInfo.InvariantCulture);
        words["wake"] = OptionWords<WakePolicy>.WordOf(Wake);
        return words.ToImmutable();
    }

    /// <summary>Failed looks in a row before a worker sleeps.</summary>
    public int PatienceFor(int workers) => Patience ?? (int)Math.Min(int.MaxValue, 2L * workers);

    /// <summary>Why the combination of options makes no sense, or null when it does.</summary>
    public Diagnostic? Refusal()
    {
        var plain = new Scheduler();
        if (Queues != Queues.PerWorker)
        {
            if (ThiefTakes != plain.ThiefTakes || Victim != plain.Victim || Amount != plain.Amount)
                return SimulationErrors.NoVictims(OptionWords<Queues>.WordOf(Queues));
            if (AtJoin == AtJoin.Leapfrog)
                return SimulationErrors.LeapfrogNeedsDeques(OptionWords<Queues>.WordOf(Queues));
        }

        if (Queues == Queues.None)
        {
            if (ForkRuns == ForkRuns.Child)
                return SimulationErrors.ThreadsQueueNothing();
            if (AtJoin != AtJoin.Wait)
                return SimulationErrors.ThreadsWait(OptionWords<AtJoin>.WordOf(AtJoin));
            if (OwnerTakes != plain.OwnerTakes || WhenIdle != plain.WhenIdle
                || Patience is not null || Wake != plain.Wake)
                return SimulationErrors.ThreadsAreNeverIdle();
        }

        if (AtJoin == AtJoin.Leapfrog && OwnerTakes == OwnerTakes.Oldest)
            return SimulationErrors.LeapfrogNeedsNewest();
        return null;
    }

    private delegate bool WordParser<T>(string word, out T value);

    private static T Parse<T>(string option, string word, WordParser<T> parser) =>
        parser(word, out T value)
            ? value
            : throw new InputException(SimulationErrors.UnknownWord(option, word, WordsOf(option)));

    private static int ParsePatience(string word) =>
        int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out int value) && value >= 1
            ? value
            : throw new InputException(SimulationErrors.BadPatience(word));
}
