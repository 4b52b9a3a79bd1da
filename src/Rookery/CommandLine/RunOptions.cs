using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;
using Rookery.Files;
using Rookery.Notation;
using Rookery.Programs;
using Rookery.Simulation;

namespace Rookery.CommandLine;

/// <summary>The options that say what is run, on what, and how; several commands share them.</summary>
internal sealed class RunOptions
{
    private readonly Option<string[]> _set =
        OptionValues.Texts("--set", "NAME=NUMBER", "Give a parameter of the program another value.");

    private readonly Option<string?> _seed =
        OptionValues.Text("--seed", "NUMBER", "What random draws follow from; 1 by default.");

    private readonly Option<string?> _workers = OptionValues.Text("--workers", "NUMBER", "Workers; 4 by default.");

    private readonly Option<string?> _machine = OptionValues.Text(
        "--machine", string.Join('|', [.. MachineNames, MachineFile.ThisComputer, "FILE"]),
        "What operations cost: nothing (the default), 1 each, nanoseconds of a real computer, or what calibrate "
            + "wrote.");

    private static IEnumerable<string> MachineNames => Machine.Presets.Select(preset => preset.Name);

    private readonly Option<string[]> _cost = OptionValues.Texts(
        "--cost", "NAME=NUMBER", "Give one operation another cost: " + string.Join(", ", Machine.CostNames) + ".");

    private readonly Option<string?> _cores =
        OptionValues.Text("--cores", "NUMBER", "Cores; as many as workers by default.");

    private readonly Option<string?> _scheduler = OptionValues.Text(
        "--scheduler", string.Join('|', Scheduler.Named.Select(named => named.Name)),
        "A named set of the options below; work-stealing by default.");

    private readonly ImmutableArray<Option<string?>> _schedulerOptions =
    [
        .. Scheduler.OptionNames.Select(name => OptionValues.Text("--" + name, WordsOf(name), Explanations[name])),
    ];

    private readonly Option<string?> _limitTasks = Limit("tasks", "Tasks of a run; 100,000,000 by default.");
    private readonly Option<string?> _limitDepth = Limit("depth", "Tasks inside one another; 10,000 by default.");
    private readonly Option<string?> _limitSteps = Limit("steps", "Instructions between two actions of a task.");
    private readonly Option<string?> _limitActions = Limit("actions", "Actions of all tasks together.");
    private readonly Option<string?> _limitLive = Limit("live", "Tasks alive at one time; 10,000,000 by default.");
    private readonly Option<string?> _limitEvents = Limit("events", "Events of a run; 2,000,000,000 by default.");
    private readonly Option<string?> _limitThreads = Limit("threads", "Threads where each task has its own.");

    private static ImmutableSortedDictionary<string, string> Explanations { get; } =
        new Dictionary<string, string>
        {
            ["queues"] = "Where queued tasks wait.",
            ["owner-takes"] = "Which of its tasks an owner takes.",
            ["thief-takes"] = "Which task a thief takes.",
            ["victim"] = "Whom a thief looks at.",
            ["amount"] = "How much a thief moves at once.",
            ["fork-runs"] = "Who runs first at a fork.",
            ["at-join"] = "What a worker does while children run.",
            ["when-idle"] = "What a worker does that finds nothing.",
            ["patience"] = "Failed looks before it sleeps; 2 x workers by default.",
            ["wake"] = "Who is woken when a task is queued.",
        }.ToImmutableSortedDictionary(StringComparer.Ordinal);

    /// <summary>What is run: parameters and seed.</summary>
    public OptionGroup Program => new("What is run", [_set, _seed]);

    /// <summary>The number of workers, alone.</summary>
    public Option Workers => _workers;

    /// <summary>The machine.</summary>
    public OptionGroup OnWhat => new("On what", [_workers, _cores, _machine, _cost]);

    /// <summary>The scheduler.</summary>
    public OptionGroup How => new("How (first value: the default)", [_scheduler, .. _schedulerOptions]);

    /// <summary>Limits on evaluating a program.</summary>
    public ImmutableArray<Option> EvaluationLimits =>
        [_limitTasks, _limitDepth, _limitSteps, _limitActions, _limitLive];

    /// <summary>All limits.</summary>
    public OptionGroup Limits => new("How far at most", [.. EvaluationLimits, _limitEvents, _limitThreads]);

    /// <summary>All that a run takes.</summary>
    public ImmutableArray<OptionGroup> All => [Program, OnWhat, How, Limits];

    /// <summary>Whether one of these options was given.</summary>
    public bool IsGiven(ParseResult parsed, string name) =>
        All.SelectMany(group => group.Options).Any(option => option.Name == name && parsed.IsGiven(option));

    /// <summary>The seed.</summary>
    public long SeedOf(ParseResult parsed) => parsed.WholeOf(_seed, long.MinValue, long.MaxValue) ?? 1;

    /// <summary>The limit of tasks, when it was given.</summary>
    public long? TasksMaxOf(ParseResult parsed) => parsed.WholeOf(_limitTasks, 1, int.MaxValue);

    /// <summary>The scheduler in a legend: the named set, and whether options were changed.</summary>
    public string SchedulerName(ParseResult parsed) =>
        (parsed.GetValue(_scheduler) ?? "work-stealing") + (_schedulerOptions.Any(parsed.IsGiven) ? ", changed" : "");

    /// <summary>All choices as words.</summary>
    /// <exception cref="InputException">A value is wrong, or values make no sense together.</exception>
    public Setup Setup(ParseResult parsed)
    {
        Setup setup = Simulation.Setup.Plain;
        void Choose(string name, Option<string?> option)
        {
            if (parsed.GetValue(option) is { } word)
                setup = setup.With(name, word);
        }

        _ = Settings(parsed);
        Choose("seed", _seed);
        Choose("workers", _workers);
        Choose("cores", _cores);
        if (parsed.GetValue(_machine) is { } machine)
            setup = OnMachine(setup, machine);
        Choose("scheduler", _scheduler);
        for (int i = 0; i < _schedulerOptions.Length; i++)
            Choose(Scheduler.OptionNames[i], _schedulerOptions[i]);
        foreach ((string cost, long value) in parsed.PairsOf(_cost))
            setup = setup.With(cost == "cores" ? cost : $"cost.{cost}", value.ToString(CultureInfo.InvariantCulture));
        foreach ((string name, long value) in parsed.PairsOf(_set))
            setup = setup.With($"set.{name}", value.ToString(CultureInfo.InvariantCulture));
        return setup;
    }

    // A calibrated machine has no word of its own: it is that of nanoseconds with each cost chosen.
    private static Setup OnMachine(Setup setup, string machine) =>
        Machine.Presets.Any(preset => preset.Name == machine)
            ? setup.With("machine", machine)
            : MachineFile.Read(machine).ToCosts().Aggregate(
                setup.With("machine", Machine.Typical.Name),
                (s, cost) => s.With($"cost.{cost.Key}", cost.Value.ToString(CultureInfo.InvariantCulture)));

    /// <summary>Parameters, seed and limits for binding a program.</summary>
    /// <exception cref="InputException">A value is out of range.</exception>
    public BindInputs BindInputs(ParseResult parsed, IDataSource data) => new(
        parsed.PairsOf(_set), data, parsed.WholeOf(_seed, long.MinValue, long.MaxValue) ?? 1, Evaluation(parsed));

    /// <summary>How far a program may go.</summary>
    /// <exception cref="InputException">A value is out of range.</exception>
    public EvaluationLimits Evaluation(ParseResult parsed)
    {
        var plain = Programs.EvaluationLimits.Default;
        return new(
            parsed.WholeOf(_limitTasks, 1, long.MaxValue) ?? plain.Tasks,
            (int)(parsed.WholeOf(_limitDepth, 1, int.MaxValue) ?? plain.Depth),
            parsed.WholeOf(_limitSteps, 1, long.MaxValue) ?? plain.Steps,
            parsed.WholeOf(_limitActions, 1, long.MaxValue) ?? plain.Actions,
            (int)(parsed.WholeOf(_limitLive, 1, int.MaxValue) ?? plain.Live));
    }

    /// <summary>How large a run may grow.</summary>
    /// <exception cref="InputException">A value is out of range.</exception>
    public RunLimits RunLimits(ParseResult parsed)
    {
        var plain = new RunLimits();
        return new()
        {
            TasksMax = parsed.WholeOf(_limitTasks, 1, long.MaxValue) ?? plain.TasksMax,
            EventsMax = parsed.WholeOf(_limitEvents, 1, long.MaxValue) ?? plain.EventsMax,
            ThreadsMax = (int)(parsed.WholeOf(_limitThreads, 1, int.MaxValue) ?? plain.ThreadsMax),
        };
    }

    /// <summary>Workers, machine, scheduler and limits of a run.</summary>
    /// <exception cref="InputException">A value is out of range, or values make no sense together.</exception>
    public RunSettings Settings(ParseResult parsed)
    {
        var settings = new RunSettings
        {
            Workers = (int)(parsed.WholeOf(_workers, 1, RunSettings.WorkersMax) ?? 4),
            Machine = MachineOf(parsed),
            Scheduler = SchedulerOf(parsed),
            Limits = RunLimits(parsed),
        };
        settings.Validate();
        return settings;
    }

    private Machine MachineOf(ParseResult parsed)
    {
        Machine machine = Machine.Ideal;
        if (parsed.GetValue(_machine) is { } name)
        {
            machine = name == MachineFile.ThisComputer || MachineFile.IsMachine(name)
                ? MachineFile.Read(name)
                : Machine.Presets.FirstOrDefault(preset => preset.Name == name) ?? throw new InputException(
                    AppErrors.UnknownWord("--machine", name, [.. MachineNames, MachineFile.ThisComputer]));
        }

        foreach ((string cost, long value) in parsed.PairsOf(_cost))
            machine = machine.With(cost, value);
        return parsed.WholeOf(_cores, 1, RunSettings.WorkersMax) is { } cores ? machine.With("cores", cores) : machine;
    }

    private Scheduler SchedulerOf(ParseResult parsed)
    {
        Scheduler scheduler = Scheduler.Named[0].Scheduler;
        if (parsed.GetValue(_scheduler) is { } name)
        {
            int at = Scheduler.Named.ToList().FindIndex(named => named.Name == name);
            if (at < 0)
            {
                throw new InputException(
                    AppErrors.UnknownWord("--scheduler", name, Scheduler.Named.Select(named => named.Name)));
            }

            scheduler = Scheduler.Named[at].Scheduler;
        }

        for (int i = 0; i < _schedulerOptions.Length; i++)
        {
            string option = Scheduler.OptionNames[i];
            if (parsed.GetValue(_schedulerOptions[i]) is not { } word)
                continue;
            ImmutableArray<string> words = Scheduler.WordsOf(option);
            if (words.Length > 0 && !words.Contains(word))
                throw new InputException(AppErrors.UnknownWord(_schedulerOptions[i].Name, word, words));
            scheduler = scheduler.With(option, word);
        }

        return scheduler;
    }

    private static string WordsOf(string option) =>
        Scheduler.WordsOf(option) is { Length: > 0 } words ? string.Join('|', words) : "NUMBER";

    private static Option<string?> Limit(string what, string description) =>
        OptionValues.Text("--limit-" + what, "NUMBER", description);
}
