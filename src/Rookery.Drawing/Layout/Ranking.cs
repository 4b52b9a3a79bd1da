using System.Collections.Immutable;

namespace Rookery.Drawing;

/// <summary>Numbers by their size, and some of many that stand for all.</summary>
internal static class Ranking
{
    /// <summary>The places of the numbers from the least to the largest; equal ones in their order.</summary>
    public static int[] Of(ReadOnlySpan<double> values)
    {
        double[] sorted = values.ToArray();
        int[] places = [.. Enumerable.Range(0, sorted.Length)];
        Array.Sort(sorted, places);

        // The sort leaves equal numbers in any order.
        for (int from = 0, to; from < sorted.Length; from = to)
        {
            to = from + 1;
            while (to < sorted.Length && sorted[to] == sorted[from])
                to++;
            Array.Sort(places, from, to - from);
        }

        return places;
    }

    /// <summary>
    /// All that are ranked, or of more than <paramref name="count"/> evenly ranked ones, both ends with them.
    /// </summary>
    /// <param name="ranked">Places in order of rank.</param>
    /// <param name="count">At least 2.</param>
    public static int[] Thinned(int[] ranked, int count) => ranked.Length <= count
        ? ranked
        : [.. Enumerable.Range(0, count).Select(i => ranked[(int)((long)i * (ranked.Length - 1) / (count - 1))])];

    /// <summary>The least and the largest of some numbers, at least one.</summary>
    public static (double Least, double Most) EndsOf(ImmutableArray<double> values)
    {
        var (least, most) = (values[0], values[0]);
        foreach (var value in values)
            (least, most) = (Math.Min(least, value), Math.Max(most, value));
        return (least, most);
    }
}
