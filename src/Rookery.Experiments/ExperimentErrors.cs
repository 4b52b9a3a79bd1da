using System.Collections.Immutable;
using System.Globalization;
using Rookery.Notation;
using Rookery.Simulation;
using Rookery.Traces.Measuring;

namespace Rookery.Experiments;

/// <summary>Everything that can be wrong with an experiment.</summary>
internal static class ExperimentErrors
{
    public static Diagnostic NoFactor(string text) => new(
        "EX001", default, $"'{text}' does not say what to vary.",
        "Write a name and its levels, as in victim=random,lowest or workers=1..16.");

    public static Diagnostic UnknownFactor(string word, ImmutableArray<string> parameters)
    {
        string[] known = [.. parameters, .. Setup.Names.Select(n => n.Replace("cost.", "", StringComparison.Ordinal))];
        return new(
            "EX002", default, $"There is nothing called '{word}' to vary.",
            Suggestion.Hint(word, known) is { Length: > 0 } hint
                ? char.ToUpperInvariant(hint[0]) + hint[1..]
                : $"Use one of {string.Join(", ", known.Where(k => k != "seed"))}.");
    }

    public static Diagnostic SeedIsNoFactor() => new(
        "EX003", default, "The seed is not varied as a choice: every combination is run with the same seeds.",
        "Say how many seeds instead.");

    public static Diagnostic LevelTwice(string name, string level) => new(
        "EX004", default, $"{name} has the level {level} twice.", "Name each level once.");

    public static Diagnostic TooManyLevels(string name, int most) => new(
        "EX005", default, string.Create(CultureInfo.InvariantCulture, $"{name} has more than {most:N0} levels."),
        "Use a step, as in 0..1000+50 or 1..1024*2.", IsLimit: true);

    public static Diagnostic NoRange(string text) => new(
        "EX006", default, $"'{text}' is no range of whole numbers.",
        "Write 1..16, 0..100+10 (each tenth) or 1..64*2 (doubling, from 1 up).");

    public static Diagnostic NothingVaries() => new(
        "EX007", default, "Nothing varies, so there is nothing to compare.",
        "Say what to vary, as in victim=random,lowest.");

    public static Diagnostic FactorTwice(string name) => new(
        "EX008", default, $"{name} is varied twice.", "Put all its levels into one list.");

    public static Diagnostic TooManyCells(Int128 cells, int most) => new(
        "EX009", default, string.Create(CultureInfo.InvariantCulture,
        $"These are {cells:N0} runs, more than {most:N0}."),
        "Use fewer levels or fewer seeds.", IsLimit: true);

    public static Diagnostic Senseless(string treatment, Diagnostic reason) => new(
        reason.Code, default, $"With {treatment}: {reason.What}", reason.Hint);

    public static Diagnostic CellFailed(string treatment, long seed, Diagnostic reason) => reason with
    {
        What = string.Create(CultureInfo.InvariantCulture, $"With {treatment} and seed {seed}: {reason.What}"),
    };

    public static Diagnostic UnknownMeasure(string name) => new(
        "EX010", default, $"There is no measure '{name}'.",
        Suggestion.Hint(name, MeasureNames.All.Select(m => m.Name)) is { Length: > 0 } hint
            ? char.ToUpperInvariant(hint[0]) + hint[1..]
            : $"Use one of {string.Join(", ", MeasureNames.All.Select(m => m.Name))}.");

    public static Diagnostic NoEffect(string text) => new(
        "EX011", default, $"'{text}' is no size of an effect.",
        "Write a percentage, as in 10%, or a number of units, as in 500.");

    public static Diagnostic NoConfidence(string text) => new(
        "EX012", default, $"'{text}' is no confidence.", "Write a percentage from 50% to 99.9%.");

    public static Diagnostic UnknownDirection(string text) => new(
        "EX013", default, $"'{text}' is no direction.", "Use lower, higher or same.");

    public static Diagnostic SameNeedsASize() => new(
        "EX014", default, "That two are the same can only be shown up to some size of effect.",
        "Say within what, as in within: 5%.");

    public static Diagnostic OtherJournal(string line) => new(
        "EX015", default, $"The kept results are not those of this comparison: {line}.",
        "Take that file away to begin anew.");
}
