using System.Collections.Immutable;
using Rookery.Notation;

namespace Rookery.Figures;

/// <summary>The kinds of figures by their words, which are file names too.</summary>
internal static class FigureWords
{
    /// <summary>All, in the order in which a talk shows them.</summary>
    public static ImmutableArray<FigureKind> All { get; } = [.. Enum.GetValues<FigureKind>()];

    /// <summary>The words.</summary>
    public static IEnumerable<string> Words => All.Select(WordOf);

    /// <summary>The word of a kind.</summary>
    public static string WordOf(FigureKind kind) => kind switch
    {
        FigureKind.Deques => "deques",
        FigureKind.Timeline => "timeline",
        FigureKind.Tree => "tree",
        FigureKind.StolenWork => "stolen-work",
        FigureKind.Steals => "steals",
        FigureKind.SpeedUp => "speed-up",
    };

    /// <summary>The kind of a word.</summary>
    /// <exception cref="InputException">There is none.</exception>
    public static FigureKind Parse(string option, string word)
    {
        foreach (FigureKind kind in All)
        {
            if (WordOf(kind) == word)
                return kind;
        }

        throw new InputException(AppErrors.UnknownWord(option, word, Words));
    }
}
