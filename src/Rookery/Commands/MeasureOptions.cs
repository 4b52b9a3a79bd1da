using System.Collections.Immutable;
using System.CommandLine;
using Rookery.CommandLine;
using Rookery.Measuring;
using Rookery.Notation;
using Rookery.Pool;
using Rookery.Simulation;

namespace Rookery.Commands;

/// <summary>The options of commands that run programs on real workers.</summary>
internal sealed class MeasureOptions
{
    private const long UnitMax = 1_000_000_000;

    private static readonly ImmutableArray<string> s_deques = ["lock-free", "thief-lock", "one-lock"];
    private static readonly ImmutableArray<string> s_fences = ["thief", "owner"];

    private readonly Option<string?> _unit = OptionValues.Text(
        "--unit", "NANOSECONDS", "How long a unit of work takes; 1000 by default, a microsecond.");

    private readonly Option<string?> _repeats = OptionValues.Text("--repeats", "NUMBER",
        "Runs that count; 10 by default.");

    private readonly Option<string?> _warmUps = OptionValues.Text(
        "--warm-up", "NUMBER", "Runs before those, for compiler and caches; 2 by default.");

    private readonly Option<string?> _deque = OptionValues.Text(
        "--deque", string.Join('|', s_deques), "How deques are kept safe; lock-free by default.");

    private readonly Option<string?> _fence = OptionValues.Text(
        "--fence", string.Join('|', s_fences), "Who pays for the lock-free deque's fence; thief by default.");

    private readonly Option<string?> _seconds = OptionValues.Text(
        "--limit-seconds", "NUMBER", "Seconds that all runs together may take; 300 by default.");

    /// <summary>How often, and how long a unit is.</summary>
    public OptionGroup Clock => new("How it is measured", [_unit, _repeats, _warmUps, _seconds]);

    /// <summary>What only real deques have.</summary>
    public OptionGroup Deques => new("Which deque", [_deque, _fence]);

    /// <summary>The settings.</summary>
    /// <exception cref="InputException">A value is out of range, or real threads cannot do that.</exception>
    public MeasureSettings Settings(ParseResult parsed, RunOptions run, int workersByDefault)
    {
        RunSettings asked = run.Settings(parsed);
        int workers = run.IsGiven(parsed, "--workers") ? asked.Workers : workersByDefault;
        bool isIdleGiven = run.IsGiven(parsed, "--when-idle") || run.IsGiven(parsed, "--patience");
        PoolOptions pool = PoolChoice.Of(asked.Scheduler, workers, run.SeedOf(parsed), isIdleGiven);
        if (Word(parsed, _deque, s_deques) is { } deque)
            pool = pool with { Deque = (DequeKind)s_deques.IndexOf(deque) };
        if (Word(parsed, _fence, s_fences) is { } fence)
            pool = pool with { Fence = (FencePlacement)s_fences.IndexOf(fence) };
        return new()
        {
            Pool = pool,
            UnitNanoseconds = parsed.WholeOf(_unit, 1, UnitMax) ?? 1000,
            Repeats = (int)(parsed.WholeOf(_repeats, 1, 100_000) ?? 10),
            WarmUps = (int)(parsed.WholeOf(_warmUps, 0, 100_000) ?? 2),
            SecondsMax = parsed.WholeOf(_seconds, 1, 1_000_000) ?? 300,
            TasksMax = (int)(run.TasksMaxOf(parsed) ?? 5_000_000),
        };
    }

    private static string? Word(ParseResult parsed, Option<string?> option, ImmutableArray<string> words)
    {
        if (parsed.GetValue(option) is not { } word)
            return null;
        return words.Contains(word) ? word : throw new InputException(AppErrors.UnknownWord(option.Name, word, words));
    }
}
