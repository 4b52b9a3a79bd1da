using System.Collections.Immutable;
using System.Globalization;
using Rookery.Notation;

namespace Rookery.Simulation;

/// <summary>All choices of a run as words: what a command line, a lesson, a link or one cell of a sweep says.</summary>
/// <remarks>
/// Names are <c>workers</c>, <c>cores</c>, <c>seed</c>, <c>scheduler</c> with every option of it, <c>machine</c>, each
/// cost as <c>cost.NAME</c>, and each parameter of the program as <c>set.NAME</c>. Only what differs from the default
/// is kept, so equal choices are equal texts whatever the order in which they were made; a named scheduler or machine
/// never undoes an option or cost that was chosen besides. <c>default</c> does not exist: begin with
/// <see cref="Plain"/>. Immutable. Example: <c>scheduler=work-first set.grain=50 victim=lowest workers=8</c>.
/// </remarks>
public sealed class Setup : IEquatable<Setup>
{
    private const string CostPrefix = "cost.";
    private const string ParameterPrefix = "set.";
    private const int WorkersPlain = 4;

    private readonly ImmutableSortedDictionary<string, string> _choices;

    private Setup(ImmutableSortedDictionary<string, string> choices) => _choices = choices;

    /// <summary>
    /// Nothing chosen: four workers, work stealing, the ideal machine, seed 1, the program's own defaults.
    /// </summary>
    public static Setup Plain { get; } = new(ImmutableSortedDictionary.Create<string, string>(StringComparer.Ordinal));

    /// <summary>Every name that does not depend on a program.</summary>
    public static ImmutableArray<string> Names { get; } =
    [
        "workers", "cores", "seed", "scheduler", .. Scheduler.OptionNames, "machine",
        .. Machine.CostNames.Where(c => c != "cores").Select(c => CostPrefix + c),
    ];

    /// <summary>What was chosen, by name, in the order of the names.</summary>
    public ImmutableSortedDictionary<string, string> Choices => _choices;

    /// <summary>The seed; 1 when none was chosen.</summary>
    public long Seed => Number("seed", 1);

    /// <summary>The parameters that were chosen.</summary>
    public ImmutableSortedDictionary<string, long> Parameters =>
        _choices.Where(c => c.Key.StartsWith(ParameterPrefix, StringComparison.Ordinal)).ToImmutableSortedDictionary(
            c => c.Key[ParameterPrefix.Length..], c => Parse(c.Value), StringComparer.Ordinal);

    /// <summary>The choices that lead to some settings: as few words as say them.</summary>
    /// <param name="settings">Workers, machine, scheduler.</param>
    /// <param name="seed">What random draws follow from.</param>
    /// <param name="parameters">Values of parameters.</param>
    public static Setup Of(RunSettings settings, long seed, IReadOnlyDictionary<string, long> parameters)
    {
        Setup setup = Plain;
        setup = setup.Chosen("workers", settings.Workers, WorkersPlain).Chosen("seed", seed, 1);
        foreach ((string name, long value) in parameters.OrderBy(one => one.Key, StringComparer.Ordinal))
            setup = setup.With(ParameterPrefix + name, value.ToString(CultureInfo.InvariantCulture));
        if (Machine.Presets.Any(one => one.Name == settings.Machine.Name)
            && settings.Machine.Name != Machine.Ideal.Name)
            setup = setup.With("machine", settings.Machine.Name);
        if (Scheduler.Named.FirstOrDefault(one => one.Scheduler == settings.Scheduler).Name is { } known
            && known != Scheduler.Named[0].Name)
            setup = setup.With("scheduler", known);
        return setup.WithOptionsOf(settings.Scheduler, settings.Workers).WithCostsOf(settings.Machine);
    }

    /// <summary>The name under which a word is chosen: itself, a cost's or a parameter's.</summary>
    /// <param name="word">A name, or the bare name of a cost or of a parameter.</param>
    /// <param name="parameters">The program's parameters.</param>
    /// <returns>The full name; null when nothing is called so. A parameter comes before a cost of the same
    /// name.</returns>
    public static string? NameOf(string word, IEnumerable<string> parameters)
    {
        if (Names.Contains(word))
            return word;
        if (parameters.Any(p => p == word || ParameterPrefix + p == word))
            return word.StartsWith(ParameterPrefix, StringComparison.Ordinal) ? word : ParameterPrefix + word;
        return Names.Contains(CostPrefix + word) ? CostPrefix + word : null;
    }

    /// <summary>This with one choice made, or made anew.</summary>
    /// <param name="name">One of <see cref="Names"/>, or <c>set.NAME</c> for a parameter.</param>
    /// <param name="word">Its value.</param>
    /// <exception cref="InputException">The name or the value is wrong; the message says what is permitted.</exception>
    public Setup With(string name, string word)
    {
        Check(name, word);
        return new(_choices.SetItem(name, word));
    }

    /// <summary>This with one choice taken back.</summary>
    public Setup Without(string name) => new(_choices.Remove(name));

    /// <summary>This with all choices of another made on top.</summary>
    public Setup With(Setup other) => new(_choices.SetItems(other._choices));

    /// <summary>Workers, machine and scheduler.</summary>
    /// <param name="limits">How large the run may grow; null for the defaults.</param>
    /// <exception cref="InputException">The choices make no sense together.</exception>
    public RunSettings ToSettings(RunLimits? limits = null)
    {
        var settings = new RunSettings
        {
            Workers = (int)Number("workers", WorkersPlain),
            Machine = MachineOf(),
            Scheduler = SchedulerOf(),
            Limits = limits ?? new(),
        };
        settings.Validate();
        return settings;
    }

    /// <summary>All choices as one line, <c>name=value</c> with spaces between.</summary>
    public override string ToString() => string.Join(' ', _choices.Select(c => $"{c.Key}={c.Value}"));

    /// <summary>Reads what <see cref="ToString"/> writes.</summary>
    /// <exception cref="InputException">It is no list of choices.</exception>
    public static Setup Read(string text)
    {
        Setup setup = Plain;
        foreach (string choice in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            int equals = choice.IndexOf('=', StringComparison.Ordinal);
            if (equals < 1)
                throw new InputException(SimulationErrors.NoChoice(choice));
            setup = setup.With(choice[..equals], choice[(equals + 1)..]);
        }

        return setup;
    }

    /// <inheritdoc/>
    public bool Equals(Setup? other) => other is not null && _choices.SequenceEqual(other._choices);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Setup);

    /// <inheritdoc/>
    public override int GetHashCode() => _choices.Count;

    private Setup Chosen(string name, long value, long plain) =>
        value == plain ? this : With(name, value.ToString(CultureInfo.InvariantCulture));

    private Setup WithOptionsOf(Scheduler wanted, int workers)
    {
        Setup setup = this;
        ImmutableSortedDictionary<string, string> words = SchedulerOf().ToWords(workers);
        foreach ((string option, string word) in wanted.ToWords(workers))
        {
            if (words[option] != word)
                setup = setup.With(option, word);
        }

        return setup;
    }

    private Setup WithCostsOf(Machine wanted)
    {
        Setup setup = this;
        Machine machine = MachineOf();
        foreach ((string cost, long value) in wanted.ToCosts())
        {
            if (cost != "cores" && machine.ToCosts()[cost] != value)
                setup = setup.With(CostPrefix + cost, value.ToString(CultureInfo.InvariantCulture));
        }

        return setup.Chosen("cores", wanted.Cores, machine.Cores);
    }

    private static void Check(string name, string word)
    {
        switch (name)
        {
            case "workers":
                CheckWhole(name, word, 1, RunSettings.WorkersMax);
                break;
            case "cores":
                CheckWhole(name, word, 1, int.MaxValue);
                break;
            case "seed":
                CheckWhole(name, word, long.MinValue, long.MaxValue);
                break;
            case "scheduler":
                _ = NamedScheduler(word);
                break;
            case "machine":
                _ = Machine.Find(word);
                break;
            case var _ when name.StartsWith(CostPrefix, StringComparison.Ordinal):
                CheckWhole(name, word, 0, Machine.CostMax);
                _ = Machine.Ideal.With(name[CostPrefix.Length..], Parse(word));
                break;
            case var _ when name.StartsWith(ParameterPrefix, StringComparison.Ordinal):
                CheckWhole(name, word, long.MinValue, long.MaxValue);
                break;
            default:
                _ = new Scheduler().With(name, word);
                break;
        }
    }

    private static void CheckWhole(string name, string word, long least, long most)
    {
        if (!long.TryParse(word, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out long value)
            || value < least || value > most)
            throw new InputException(SimulationErrors.BadChoice(name, word, least, most));
    }

    private static Scheduler NamedScheduler(string name)
    {
        foreach ((string known, Scheduler scheduler) in Scheduler.Named)
        {
            if (known == name)
                return scheduler;
        }

        throw new InputException(
            SimulationErrors.UnknownName("scheduler", name, Scheduler.Named.Select(named => named.Name)));
    }

    private static long Parse(string word) => long.Parse(word, CultureInfo.InvariantCulture);

    private long Number(string name, long plain) => _choices.TryGetValue(name, out string? word) ? Parse(word) : plain;

    private Machine MachineOf()
    {
        Machine machine = _choices.TryGetValue("machine", out string? name) ? Machine.Find(name) : Machine.Ideal;
        foreach ((string choice, string word) in _choices)
        {
            if (choice.StartsWith(CostPrefix, StringComparison.Ordinal))
                machine = machine.With(choice[CostPrefix.Length..], Parse(word));
        }

        return _choices.TryGetValue("cores", out string? cores) ? machine.With("cores", Parse(cores)) : machine;
    }

    private Scheduler SchedulerOf()
    {
        Scheduler scheduler = _choices.TryGetValue("scheduler", out string? name) ? NamedScheduler(name) : new();
        return Scheduler.OptionNames.Where(_choices.ContainsKey).Aggregate(
            scheduler, (s, option) => s.With(option, _choices[option]));
    }
}
