namespace Rookery.Drawing;

/// <summary>Marks for points that differ in shape, so that series are told apart in any print.</summary>
internal static class PointShape
{
    // The paints of workers that are dark enough for points and thin lines; yellow is not.
    private static ReadOnlySpan<int> Paints => [0, 6, 2, 4, 1, 7];

    /// <summary>The ink of a series: the emphasis when it is the only one.</summary>
    public static Ink InkOf(int series, int seriesCount) =>
        seriesCount == 1 ? Role.Emphasis : Ink.Worker(Paints[series]);

    /// <summary>Disc, square, triangle, diamond, upright bar, level bar for series 0 to 5.</summary>
    public static Mark At(int series, double x, double y, double radius, Ink ink) => series switch
    {
        1 => new Box(new(x - (radius * 0.85), y - (radius * 0.85), radius * 1.7, radius * 1.7), ink)
        {
            Edge = Role.Paper,
            EdgeWidth = 1.2,
        },
        2 => Closed(ink, (x, y - radius), (x + radius, y + (radius * 0.8)), (x - radius, y + (radius * 0.8))),
        3 => Closed(ink, (x, y - radius * 1.1), (x + radius * 1.1, y), (x, y + radius * 1.1), (x - radius * 1.1, y)),
        4 => new Box(new(x - (radius * 0.4), y - radius, radius * 0.8, radius * 2), ink),
        5 => new Box(new(x - radius, y - (radius * 0.4), radius * 2, radius * 0.8), ink),
        _ => new Disc(x, y, radius, ink) { Edge = Role.Paper, EdgeWidth = 1.2 },
    };

    private static Outline Closed(Ink ink, params ReadOnlySpan<(double X, double Y)> corners)
    {
        var steps = new List<PathStep>();
        foreach (var (x, y) in corners)
            steps.Add(steps.Count == 0 ? PathStep.Move(x, y) : PathStep.Line(x, y));
        steps.Add(PathStep.Close);
        return new([.. steps], ink) { Edge = Role.Paper, EdgeWidth = 1.2 };
    }
}
