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

    private static readonly ImmutableArray<byte[]> Utf8 = [.. All.Select(System.Text.Encoding.UTF8.GetBytes)];

    /// <summary>The word of a kind.</summary>
    public static string WordOf(EventKind kind) => All[(int)kind];

    /// <summary>The kind that a word names; the case of letters matters, as everywhere in the form.</summary>
    public static bool TryParse(ReadOnlySpan<byte> word, out EventKind kind)
    {
        for (int i = 0; i < Utf8.Length; i++)
        {
            if (word.Length == Utf8[i].Length && word.SequenceEqual(Utf8[i]))
            {
                kind = (EventKind)i;
                return true;
            }
        }

        kind = default;
        return false;
    }

    /// <inheritdoc cref="TryParse(ReadOnlySpan{byte}, out EventKind)"/>
    public static bool TryParse(ReadOnlySpan<char> word, out EventKind kind)
    {
        for (int i = 0; i < All.Length; i++)
        {
            if (word.Length == All[i].Length && word.SequenceEqual(All[i]))
            {
                kind = (EventKind)i;
                return true;
            }
        }

        kind = default;
        return false;
    }
}
