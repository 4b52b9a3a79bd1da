using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;
using Rookery.Notation;

namespace Rookery.CommandLine;

/// <summary>Reads the values of options; checked here, so that errors say what is permitted.</summary>
internal static class OptionValues
{
    /// <summary>An option with one value.</summary>
    public static Option<string?> Text(string name, string value, string description) =>
        new(name) { HelpName = value, Description = description };

    /// <summary>An option that may be given several times.</summary>
    public static Option<string[]> Texts(string name, string value, string description) =>
        new(name) { HelpName = value, Description = description + " May be given several times." };

    /// <summary>An option without a value.</summary>
    public static Option<bool> Flag(string name, string description) => new(name) { Description = description };

    /// <summary>Whether an option was given.</summary>
    public static bool IsGiven(this ParseResult parsed, Option option) =>
        parsed.GetResult(option) is { Implicit: false };

    /// <summary>The value of an option as a whole number; null when it was not given.</summary>
    /// <exception cref="InputException">It is none, or out of range.</exception>
    public static long? WholeOf(this ParseResult parsed, Option<string?> option, long least, long most)
    {
        if (parsed.GetValue(option) is not { } text)
            return null;
        return TryWhole(text, out long value) && value >= least && value <= most
            ? value
            : throw new InputException(AppErrors.BadNumber(option.Name, text, least, most));
    }

    /// <summary>The values of an option of the form <c>name=50</c>.</summary>
    /// <exception cref="InputException">One has another form, or a name comes twice.</exception>
    public static ImmutableSortedDictionary<string, long> PairsOf(this ParseResult parsed, Option<string[]> option)
    {
        var pairs = ImmutableSortedDictionary.CreateBuilder<string, long>(StringComparer.Ordinal);
        foreach (string text in parsed.GetValue(option) ?? [])
        {
            int at = text.IndexOf('=', StringComparison.Ordinal);
            if (at < 1 || !TryWhole(text[(at + 1)..], out long value))
                throw new InputException(AppErrors.BadPair(option.Name, text));
            if (!pairs.TryAdd(text[..at], value))
                throw new InputException(AppErrors.GivenTwice($"{option.Name} {text[..at]}"));
        }

        return pairs.ToImmutable();
    }

    private static bool TryWhole(string text, out long value) =>
        long.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out value);
}
