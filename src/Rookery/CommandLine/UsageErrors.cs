using System.CommandLine;
using System.CommandLine.Parsing;
using Rookery.Notation;

namespace Rookery.CommandLine;

/// <summary>Turns what the parser of the command line could not use into one message that helps.</summary>
internal static class UsageErrors
{
    /// <summary>The first thing that is wrong; null when nothing is.</summary>
    /// <param name="parsed">What the parser made of the words.</param>
    /// <param name="verb">The command; null when there is none.</param>
    /// <param name="verbs">All commands.</param>
    public static Diagnostic? First(ParseResult parsed, Verb? verb, IReadOnlyList<Verb> verbs)
    {
        if (parsed.UnmatchedTokens.Count > 0)
            return Unmatched(parsed.UnmatchedTokens, verb, verbs);
        return parsed.Errors.Count > 0 ? FromError(parsed.Errors[0], verb) : null;
    }

    private static Diagnostic Unmatched(IReadOnlyList<string> words, Verb? verb, IReadOnlyList<Verb> verbs)
    {
        if (words.FirstOrDefault(word => word.Length > 1 && word[0] == '-') is { } option)
        {
            string name = option.Split('=')[0];
            IEnumerable<Option> known = verb?.Command.Options ?? verbs.SelectMany(one => one.Command.Options);
            string nearest = Suggestion.Nearest(name, known.Select(one => one.Name)) ?? "";
            return AppErrors.UnknownOption(name, verb?.Command.Name ?? "", nearest);
        }

        if (verb is not null)
            return AppErrors.TooMany(verb.Command.Name, words[0]);
        IEnumerable<string> names = verbs.Select(one => one.Command.Name);
        string meant = File.Exists(words[0]) ? $"run {words[0]}" : Suggestion.Nearest(words[0], names) ?? "";
        return AppErrors.UnknownVerb(words[0], meant, names);
    }

    private static Diagnostic FromError(ParseError error, Verb? verb)
    {
        switch (error.SymbolResult)
        {
            case OptionResult { Tokens.Count: 0 } option:
                return AppErrors.MissingValue(option.Option.Name, option.Option.HelpName ?? "VALUE");
            case OptionResult option:
                return AppErrors.GivenTwice(option.Option.Name);
            case ArgumentResult or CommandResult when verb?.Taken is { } argument:
                return AppErrors.MissingArgument(verb.Command.Name, argument.HelpName!);
            default:
                return AppErrors.BadUsage(error.Message);
        }
    }
}
