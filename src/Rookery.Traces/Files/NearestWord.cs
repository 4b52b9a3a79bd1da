namespace Rookery.Traces.Files;

/// <summary>Finds the word that an author most likely meant.</summary>
internal static class NearestWord
{
    /// <summary>Longest input that is compared: the distance takes time in the product of both lengths.</summary>
    private const int LengthMax = 32;

    /// <summary>
    /// The permitted word with the fewest letters to change, add, leave out or swap with their neighbour, if at most a
    /// third of its letters (and at least one) are at fault; null when nothing is near.
    /// </summary>
    /// <remarks>
    /// The distance is that of F. J. Damerau, "A technique for computer detection and correction of spelling errors"
    /// (1964), in its restricted form. Upper and lower case and <c>_</c> for <c>-</c> cost nothing. <c>"jion-wait"</c>
    /// is 1 away from <c>join-wait</c>.
    /// </remarks>
    public static string? Of(string found, IEnumerable<string> permitted)
    {
        if (found.Length is 0 or > LengthMax)
            return null;
        string plain = found.Trim().Replace('_', '-').ToLowerInvariant();
        string? best = null;
        int least = int.MaxValue;
        foreach (string word in permitted)
        {
            int distance = Distance(plain, word);
            if (distance < least && distance <= Math.Max(1, word.Length / 3))
                (best, least) = (word, distance);
        }

        return best;
    }

    private static int Distance(string a, string b)
    {
        int[] twoAbove = new int[b.Length + 1];
        int[] above = new int[b.Length + 1];
        int[] row = new int[b.Length + 1];
        for (int j = 0; j <= b.Length; j++)
            above[j] = j;
        for (int i = 1; i <= a.Length; i++)
        {
            row[0] = i;
            for (int j = 1; j <= b.Length; j++)
            {
                int change = above[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
                row[j] = Math.Min(change, Math.Min(above[j], row[j - 1]) + 1);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                    row[j] = Math.Min(row[j], twoAbove[j - 2] + 1);
            }

            (twoAbove, above, row) = (above, row, twoAbove);
        }

        return above[b.Length];
    }
}
