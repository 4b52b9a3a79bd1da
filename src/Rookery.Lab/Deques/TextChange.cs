using System.Collections.Immutable;

namespace Rookery.Lab.Deques;

/// <summary>
/// How one text differs from another, by lines: what is left when equal beginnings and ends are taken away.
/// </summary>
/// <param name="FirstLine">The first line that differs, from 1.</param>
/// <param name="Before">Lines of the first text that are not in the second.</param>
/// <param name="After">Lines of the second that stand in their place.</param>
internal sealed record TextChange(int FirstLine, ImmutableArray<string> Before, ImmutableArray<string> After)
{
    /// <summary>Compares; null when the texts are the same.</summary>
    public static TextChange? Between(string before, string after)
    {
        var (old, changed) = (LineEdits.LinesOf(before), LineEdits.LinesOf(after));
        int least = Math.Min(old.Length, changed.Length);
        int same = 0;
        while (same < least && old[same] == changed[same])
            same++;
        int tail = 0;
        while (tail < least - same && old[^(tail + 1)] == changed[^(tail + 1)])
            tail++;
        return same == old.Length && same == changed.Length
            ? null
            : new(same + 1, old[same..^tail], changed[same..^tail]);
    }
}
