namespace Rookery.Drawing;

/// <summary>Which steals a timeline draws, and what it says about the others.</summary>
internal static class TimelineLinks
{
    private const double GapMin = 14;

    /// <summary>
    /// The links between different rows that stand clear of those before them: overlapping ones are at least
    /// <see cref="GapMin"/> pixels apart, and no stretch of time has more than its share of the links permitted.
    /// </summary>
    /// <param name="plan">The rows and steals.</param>
    /// <param name="options">How many links are permitted.</param>
    /// <param name="width">About how wide the plot is, in pixels.</param>
    public static List<Link> Choose(TimelinePlan plan, TimelineOptions options, double width)
    {
        var chosen = new List<Link>();
        if (!options.ShowSteals || options.LinksMax == 0)
            return chosen;
        // Between rows of many workers a link says little: fewer of them.
        var most = plan.WorkersInRow == 1 ? options.LinksMax : (options.LinksMax + 2) / 3;
        var perTick = width / Math.Max(1, (double)plan.To - plan.From);
        var spread = plan.Steals.Count > most ? width / most : 0;
        var lastX = double.NegativeInfinity;
        foreach (var (time, thief, victim, step) in plan.Steals)
        {
            var link = new Link(time, victim / plan.WorkersInRow, thief / plan.WorkersInRow, step);
            var x = (time - plan.From) * perTick;
            if (link.FromRow == link.ToRow || chosen.Count == most || x - lastX < spread)
                continue;
            if (!IsClear(chosen, link, x, perTick, plan.From))
                continue;
            chosen.Add(link);
            lastX = x;
        }

        return chosen;
    }

    private static bool IsClear(List<Link> chosen, Link link, double x, double perTick, long from)
    {
        for (var i = chosen.Count - 1; i >= 0 && x - ((chosen[i].Time - from) * perTick) < GapMin; i--)
        {
            if (chosen[i].Overlaps(link))
                return false;
        }

        return true;
    }

    /// <summary>What the figure puts together or leaves out, as sentences.</summary>
    public static IEnumerable<string> NotesOf(TimelinePlan plan, TimelineOptions options, int drawn)
    {
        var words = options.Frame.Words;
        if (plan.Shares is { } shares)
            yield return words.SlicesNote(shares.GetLength(1), plan.WorkersInRow);
        if (options.ShowSteals && drawn < plan.Steals.Count)
            yield return words.LinksNote(drawn, plan.Steals.Count);
    }
}
