using System.Collections.Immutable;
using System.CommandLine;
using Rookery.Checking;
using Rookery.Notation;

namespace Rookery.CommandLine;

/// <summary>The options of <c>check</c> that say under which model, how far, and with how many threads.</summary>
internal sealed class CheckLimits
{
    private const int ThreadsMax = 64;
    private const int BufferMost = 32;
    private const long StatesMost = 4_000_000_000;

    private readonly Option<string?> _memory = OptionValues.Text(
        "--memory", "sc|tso|pso|ra", "What reads may see; several with commas; sc by default.");

    private readonly Option<string?> _buffer = OptionValues.Text(
        "--buffer", "NUMBER", "Most writes that wait in a store buffer (tso, pso); no bound by default.");

    private readonly Option<string?> _reduce = OptionValues.Text(
        "--reduce", "all|off|names,symmetry,silent,local",
        "Which states are left out; off: none, as docs/checker.md counts; all by default.");

    private readonly Option<string?> _threads = OptionValues.Text(
        "--threads", "NUMBER", "Threads that search; as many as the computer has cores by default.");

    private readonly Option<string?> _states = OptionValues.Text(
        "--limit-states", "NUMBER", "States of one scenario; 100,000,000 by default.");

    private readonly Option<string?> _megabytes = OptionValues.Text(
        "--limit-memory", "MEGABYTES", "Memory that states take; 8,192 by default.");

    private readonly Option<string?> _seconds = OptionValues.Text(
        "--limit-seconds", "NUMBER", "Time for one scenario; none by default.");

    /// <summary>What is checked.</summary>
    public ImmutableArray<Option> What => [_memory, _buffer, _reduce];

    /// <summary>How far it may go.</summary>
    public OptionGroup Limits => new("Limits", [_threads, _states, _megabytes, _seconds]);

    /// <summary>Seconds for one scenario; null for no limit.</summary>
    public long? Seconds(ParseResult parsed) => parsed.WholeOf(_seconds, 1, 1_000_000);

    /// <summary>The models, in the order in which they were asked for.</summary>
    /// <exception cref="InputException">One is none.</exception>
    public ImmutableArray<MemoryModel> Models(ParseResult parsed)
    {
        string[] words = (parsed.GetValue(_memory) ?? "sc").Split(',', StringSplitOptions.TrimEntries);
        return [.. words.Select(word => ModelOf(word)).Distinct()];
    }

    /// <summary>The options of a search, without a model.</summary>
    /// <exception cref="InputException">A value is none, or out of range.</exception>
    public CheckOptions Options(ParseResult parsed)
    {
        var plain = new CheckOptions();
        int cores = Math.Min(ThreadsMax, Environment.ProcessorCount);
        int threads = (int)(parsed.WholeOf(_threads, 1, ThreadsMax) ?? cores);
        var parallel = new ParallelOptions { MaxDegreeOfParallelism = threads };
        long bytes = parsed.WholeOf(_megabytes, 1, 1 << 20) is { } megabytes ? megabytes << 20 : plain.BytesMax;
        return plain with
        {
            BufferMax = (int)(parsed.WholeOf(_buffer, 1, BufferMost) ?? 0),
            Reductions = ReductionsOf(parsed.GetValue(_reduce) ?? "all"),
            StatesMax = parsed.WholeOf(_states, 1, StatesMost) ?? plain.StatesMax,
            BytesMax = bytes,
            Run = threads == 1 ? plain.Run : (count, part) => Parallel.For(0, count, parallel, part),
        };
    }

    private static Reductions ReductionsOf(string list) => list switch
    {
        "all" or "on" => Reductions.All,
        "off" => Reductions.None,
        _ => list.Split(',', StringSplitOptions.TrimEntries).Aggregate(
            Reductions.None, (all, word) => all | ReductionOf(word)),
    };

    private static Reductions ReductionOf(string word) => word switch
    {
        "names" => Reductions.Names,
        "symmetry" => Reductions.Symmetry,
        "silent" => Reductions.Silent,
        "local" => Reductions.Local,
        _ => throw new InputException(AppErrors.UnknownWord(
            "--reduce", word, ["all", "off", "names", "symmetry", "silent", "local"])),
    };

    /// <summary>The word of a model.</summary>
    public static string WordOf(MemoryModel model) => model switch
    {
        MemoryModel.Sc => "sc",
        MemoryModel.Tso => "tso",
        MemoryModel.Pso => "pso",
        MemoryModel.Ra => "ra",
    };

    private static MemoryModel ModelOf(string word)
    {
        MemoryModel[] all = Enum.GetValues<MemoryModel>();
        return all.Cast<MemoryModel?>().FirstOrDefault(model => WordOf(model!.Value) == word)
            ?? throw new InputException(AppErrors.UnknownWord("--memory", word, all.Select(WordOf)));
    }
}
