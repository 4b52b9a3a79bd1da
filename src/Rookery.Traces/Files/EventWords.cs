using System.Collections.Immutable;

namespace Rookery.Traces.Files;

/// <summary>The words of docs/trace.md for the kinds of event, in the order of <see cref="EventKind"/>.</summary>
internal static class EventWords
{
    /// <summary>All words; index <c>n</c> is the word of kind <c>n</c>.</summary>
    public static ImmutableArray<string> All { get; } =
    [
        "begin", "end", "work", "fork", "call", "take", "probe", "steal", "lost-race", "empty", "join-wait",
        "join-pass", "block", "unblock", "sleep", "wake", "stop",
    ];

    private const int Places = 32;

    private static readonly ImmutableArray<byte[]> Utf8 = [.. All.Select(System.Text.Encoding.UTF8.GetBytes)];

    // The kinds by the places of their words; -1 where there is none.
    private static readonly ImmutableArray<int> KindAt =
    [
        .. Enumerable.Range(0, Places).Select(
            place => All.ToList().FindIndex(word => PlaceOf(word[0], word[^1], word.Length) == place)),
    ];

    /// <summary>The word of a kind.</summary>
    public static string WordOf(EventKind kind) => All[(int)kind];

    /// <summary>The kind that a word names; the case of letters matters, as everywhere in the form.</summary>
    public static bool TryParse(ReadOnlySpan<byte> word, out EventKind kind)
    {
        int found = word.IsEmpty ? -1 : KindAt[PlaceOf(word[0], word[^1], word.Length)];
        kind = (EventKind)Math.Max(0, found);
        return found >= 0 && word.SequenceEqual(Utf8[found]);
    }

    /// <inheritdoc cref="TryParse(ReadOnlySpan{byte}, out EventKind)"/>
    public static bool TryParse(ReadOnlySpan<char> word, out EventKind kind)
    {
        int found = word.IsEmpty ? -1 : KindAt[PlaceOf(word[0], word[^1], word.Length)];
        kind = (EventKind)Math.Max(0, found);
        return found >= 0 && word.SequenceEqual(All[found]);
    }

    // The first letter, the last and the length tell all words apart: a word is compared with one other, not with all.
    // A file has as many words as events.
    private static int PlaceOf(int first, int last, int length) =>
        unchecked(first + (5 * last) + (2 * length)) & (Places - 1);
}
