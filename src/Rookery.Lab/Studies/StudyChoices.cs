using System.Collections.Immutable;
using System.Globalization;
using Rookery.Programs;
using Rookery.Simulation;

namespace Rookery.Lab.Studies;

/// <summary>What can be varied, and the values that make sense to begin with.</summary>
internal static class StudyChoices
{
    /// <summary>All choices by kind, each by the name that a setup gives it; the seed is none.</summary>
    public static ImmutableArray<(string Kind, ImmutableArray<string> Names)> Of(FjProgram? program) =>
    [
        ("parameters", [.. (program?.Parameters ?? []).Select(parameter => "set." + parameter.Name)]),
        ("scheduler", ["scheduler", .. Scheduler.OptionNames]),
        ("machine", ["workers", "cores", "machine", .. Setup.Names.Where(IsCost)]),
    ];

    /// <summary>The name without its prefix, as people say it.</summary>
    public static string ShortName(string name) => name[(name.IndexOf('.', StringComparison.Ordinal) + 1)..];

    /// <summary>The words that a choice permits; empty where it takes numbers.</summary>
    public static ImmutableArray<string> WordsOf(string name) => name switch
    {
        "scheduler" => [.. Scheduler.Named.Select(named => named.Name)],
        "machine" => [.. Machine.Presets.Select(machine => machine.Name)],
        _ when Scheduler.OptionNames.Contains(name) => Scheduler.WordsOf(name),
        _ => [],
    };

    /// <summary>Values to begin with: all words, or some numbers around the usual one.</summary>
    public static ImmutableArray<string> LevelsOf(string name, FjProgram? program)
    {
        ImmutableArray<string> words = WordsOf(name);
        if (!words.IsEmpty)
            return words;
        if (program?.Parameters.FirstOrDefault(one => "set." + one.Name == name) is { } parameter)
            return Around(parameter.Default, parameter.Min, parameter.Max);
        return name switch
        {
            "workers" or "cores" or "patience" => ["1", "2", "4", "8", "16"],
            "cost.probe" or "cost.slice" => ["1", "10", "100", "1000"],
            _ => ["0", "1", "10", "100", "1000"],
        };
    }

    private static bool IsCost(string name) => name.StartsWith("cost.", StringComparison.Ordinal);

    private static ImmutableArray<string> Around(long usual, long least, long most)
    {
        Int128[] wanted = usual > 0
            ? [usual / 4, usual / 2, usual, (Int128)usual * 2, (Int128)usual * 4]
            : [(Int128)usual - 1, usual, (Int128)usual + 1];
        return
        [
            .. wanted.Select(value => (long)Int128.Clamp(value, Int128.Max(least, usual > 0 ? 1 : least), most))
                .Distinct().Select(value => value.ToString(CultureInfo.InvariantCulture)),
        ];
    }
}
