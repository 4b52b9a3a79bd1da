using System.Collections.Immutable;
using System.Globalization;
using Rookery.Notation;
using Rookery.Simulation;

namespace Rookery.Experiments;

/// <summary>One choice that an experiment varies, with the levels that it takes.</summary>
/// <remarks>Factor, level, treatment and replicate are the words of the design of experiments. Immutable.</remarks>
public sealed class Factor
{
    /// <summary>The most levels that a factor may have.</summary>
    public const int LevelsMax = 1_000;

    private Factor(string name, ImmutableArray<string> levels) => (Name, Levels) = (name, levels);

    /// <summary>
    /// The choice, by the full name of <see cref="Setup"/>: <c>victim</c>, <c>cost.steal</c>, <c>set.grain</c>.
    /// </summary>
    public string Name { get; }

    /// <summary>Its levels as words, in the order given, each once.</summary>
    public ImmutableArray<string> Levels { get; }

    /// <summary>The name without its prefix, as a table shows it.</summary>
    public string ShortName => Name[(Name.IndexOf('.', StringComparison.Ordinal) + 1)..];

    /// <summary>Whether every level is a whole number, so that a figure can space them by value.</summary>
    public bool IsNumeric => Levels.All(l => long.TryParse(l, NumberStyles.AllowLeadingSign, null, out _));

    /// <summary>Reads <c>NAME=LEVEL,LEVEL,…</c>.</summary>
    /// <remarks>
    /// A level is a word or a whole number; numbers may be ranges: <c>1..16</c> (each), <c>0..100+10</c> (each tenth),
    /// <c>1..64*2</c> (doubling). Both ends are included when they are met.
    /// Example: <c>workers=1..8*2,12</c> has the levels 1, 2, 4, 8 and 12.
    /// </remarks>
    /// <param name="text">What is written.</param>
    /// <param name="parameters">The program's parameters, which can be varied too.</param>
    /// <exception cref="InputException">It is no factor; the message says why.</exception>
    public static Factor Parse(string text, ImmutableArray<string> parameters)
    {
        int equals = text.IndexOf('=', StringComparison.Ordinal);
        if (equals < 1 || equals == text.Length - 1)
            throw new InputException(ExperimentErrors.NoFactor(text));
        return Of(text[..equals].Trim(), text[(equals + 1)..].Split(','), parameters);
    }

    /// <summary>A factor from its name and levels, each as in <see cref="Parse"/>.</summary>
    /// <exception cref="InputException">The name or a level is wrong.</exception>
    public static Factor Of(string word, IEnumerable<string> levels, ImmutableArray<string> parameters)
    {
        string name = Setup.NameOf(word, parameters)
            ?? throw new InputException(ExperimentErrors.UnknownFactor(word, parameters));
        if (name == "seed")
            throw new InputException(ExperimentErrors.SeedIsNoFactor());
        var all = ImmutableArray.CreateBuilder<string>();
        foreach (string level in levels.SelectMany(l => Expand(l.Trim())))
        {
            _ = Setup.Plain.With(name, level);
            if (all.Contains(level))
                throw new InputException(ExperimentErrors.LevelTwice(word, level));
            all.Add(level);
            if (all.Count > LevelsMax)
                throw new InputException(ExperimentErrors.TooManyLevels(word, LevelsMax));
        }

        if (all.Count == 0)
            throw new InputException(ExperimentErrors.NoFactor(word));
        return new(name, all.ToImmutable());
    }

    private static IEnumerable<string> Expand(string level)
    {
        int dots = level.IndexOf("..", StringComparison.Ordinal);
        if (dots < 0)
            return [level];
        string rest = level[(dots + 2)..];
        int sign = rest.IndexOfAny(['+', '*']);
        string last = sign < 0 ? rest : rest[..sign];
        string step = sign < 0 ? "1" : rest[(sign + 1)..];
        bool isTimes = sign >= 0 && rest[sign] == '*';
        if (!TryWhole(level[..dots], out long from) || !TryWhole(last, out long to) || !TryWhole(step, out long by)
            || from > to || by < (isTimes ? 2 : 1) || (isTimes && from < 1))
            throw new InputException(ExperimentErrors.NoRange(level));
        return Range(from, to, by, isTimes);
    }

    private static IEnumerable<string> Range(long from, long to, long by, bool isTimes)
    {
        for (Int128 value = from; value <= to; value = isTimes ? value * by : value + by)
            yield return value.ToString(CultureInfo.InvariantCulture);
    }

    private static bool TryWhole(string text, out long value) =>
        long.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out value);
}
