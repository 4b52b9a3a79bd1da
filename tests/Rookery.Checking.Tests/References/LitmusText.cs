using System.Globalization;
using System.Text;

namespace Rookery.Checking.Tests.References;

/// <summary>Writes litmus tests of the literature in our notation.</summary>
internal static class LitmusText
{
    /// <summary>Writes one.</summary>
    /// <param name="program">Threads between bars, accesses between semicolons.</param>
    /// <param name="asked">The outcome.</param>
    /// <param name="isOrdered">Whether stores release and loads acquire, as in the column RA.</param>
    public static string Of(string program, string asked, bool isOrdered)
    {
        string[][] threads = [.. program.Split('|').Select(one => one.Split(';', StringSplitOptions.TrimEntries))];
        string[] places = ["x", "y", "z"];
        var text = new StringBuilder();
        foreach (string place in places.Where(place => program.Contains(place, StringComparison.Ordinal)))
            text.Append(CultureInfo.InvariantCulture, $"shared {place} = 0\n");
        var owner = new Dictionary<string, int>(StringComparer.Ordinal);
        for (int thread = 0; thread < threads.Length; thread++)
        {
            text.Append(CultureInfo.InvariantCulture, $"operation t{thread}()\n");
            var names = new List<string>();
            foreach (string access in threads[thread])
                text.Append("    ").Append(Line(access, places, isOrdered, names)).Append('\n');
            if (names.Count > 0)
                text.Append("    return ").AppendJoin(", ", names).Append('\n');
            foreach (string one in names)
                owner[one] = thread;
        }

        text.Append("scenario \"litmus\"\n");
        for (int thread = 0; thread < threads.Length; thread++)
            text.Append(CultureInfo.InvariantCulture, $"    thread p{thread}: t{thread}()\n");
        var conditions = asked.Split(',').Select(one => owner.TryGetValue(one[..1], out int thread)
            ? $"p{thread}.{one}" : one);
        return text.Append("exists ").AppendJoin(" and ", conditions).Append('\n').ToString();
    }

    private static string Line(string access, string[] places, bool isOrdered, List<string> names)
    {
        if (access == "mf")
            return "fence";
        if (access == "ss")
            return "fence release";
        string[] sides = access.Split('=');
        if (places.Contains(sides[0]))
            return $"{sides[0]} = {sides[1]}{(isOrdered ? " release" : "")}";
        names.Add(sides[0]);
        if (sides[1].StartsWith("xchg", StringComparison.Ordinal))
        {
            string[] parts = sides[1][5..].Split(',');
            return $"let {sides[0]} = swap({parts[0]}, {parts[1]}){(isOrdered ? "" : " relaxed")}";
        }

        return $"let {sides[0]} = {sides[1]}{(isOrdered ? " acquire" : "")}";
    }
}
