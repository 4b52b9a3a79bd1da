using System.Collections.Immutable;
using Rookery.Lab.Texts;
using Rookery.Traces.Replaying;

namespace Rookery.Lab.Stage;

/// <summary>Lets moments be asked for in the reader's language.</summary>
/// <remarks>
/// Word by word: the language's texts say which of its words stands for which word of <see cref="Moments"/>; a word
/// without one stays, so that the names of lessons and of the command line are understood in every language.
/// </remarks>
internal sealed class MomentWords(LabTexts texts)
{
    /// <summary>What may be asked for, to choose from.</summary>
    public ImmutableArray<string> Examples =>
        [.. texts["find.examples"].Split(',', StringSplitOptions.TrimEntries)];

    /// <summary>What was asked for, as <see cref="Moments.Find"/> understands it.</summary>
    public string ToName(string asked)
    {
        Dictionary<string, string> known = Known();
        IEnumerable<string> words = asked.ToLowerInvariant().Split(' ', StringSplitOptions.RemoveEmptyEntries)
            .Select(word => known.GetValueOrDefault(word, word));
        return string.Join(' ', words.Where(word => word.Length > 0));
    }

    /// <summary>Why nothing was found.</summary>
    /// <param name="asked">What was asked for.</param>
    /// <param name="found">What came of it.</param>
    public string WhyNot(string asked, MomentSteps found) => found.Error?.Code == "MO001"
        ? texts.Of("find.not-understood", asked.Trim(), string.Join(", ", Examples))
        : texts.Of("find.none", asked.Trim());

    // Pairs such as "erster=first"; nothing behind the sign for a word that says nothing more.
    private Dictionary<string, string> Known()
    {
        var known = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (string pair in texts["find.words"].Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            int sign = pair.IndexOf('=', StringComparison.Ordinal);
            known[pair[..sign]] = pair[(sign + 1)..];
        }

        return known;
    }
}
