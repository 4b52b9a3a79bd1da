namespace Rookery.Notation;

/// <summary>Guesses which known word a misspelt one was meant to be.</summary>
public static class Suggestion
{
    /// <summary>Longer words are not looked at: the cost grows with the square of the length.</summary>
    private const int LengthMax = 64;

    /// <summary>The known word nearest to <paramref name="word"/>, or null when none is near.</summary>
    /// <remarks>
    /// Near means: at most one edit for every three letters, at least one edit allowed. An edit inserts, deletes or
    /// replaces a letter or swaps two neighbours (Damerau 1964, "optimal string alignment"). Of two equally near ones
    /// the first wins. Example: <c>jion</c> is one edit from <c>join</c>.
    /// </remarks>
    public static string? Nearest(string word, IEnumerable<string> known)
    {
        int best = Math.Max(1, word.Length / 3) + 1;
        string? nearest = null;
        foreach (string candidate in known)
        {
            bool isFar = Math.Abs(word.Length - candidate.Length) >= best;
            if (isFar || word.Length > LengthMax || candidate.Length > LengthMax || candidate == word)
                continue;
            int edits = Edits(word, candidate);
            if (edits < best && edits < candidate.Length)
                (best, nearest) = (edits, candidate);
        }

        return nearest;
    }

    /// <summary>A hint made of <see cref="Nearest"/>, or empty.</summary>
    public static string Hint(string word, IEnumerable<string> known) =>
        Nearest(word, known) is { } nearest ? $"did you mean {nearest}?" : "";

    private static int Edits(string a, string b)
    {
        var row = new int[a.Length + 1, b.Length + 1];
        for (int i = 0; i <= a.Length; i++)
            row[i, 0] = i;
        for (int j = 0; j <= b.Length; j++)
            row[0, j] = j;
        for (int i = 1; i <= a.Length; i++)
        {
            for (int j = 1; j <= b.Length; j++)
            {
                int replace = row[i - 1, j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
                row[i, j] = Math.Min(replace, 1 + Math.Min(row[i - 1, j], row[i, j - 1]));
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                    row[i, j] = Math.Min(row[i, j], row[i - 2, j - 2] + 1);
            }
        }

        return row[a.Length, b.Length];
    }
}
