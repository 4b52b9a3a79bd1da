namespace Rookery.Drawing;

/// <summary>A link with a dot where it starts and a head where it ends, readable over any fill.</summary>
internal static class Arrow
{
    /// <summary>An arrow up or down, two shapes.</summary>
    public static IEnumerable<Mark> Upright(double x, double start, double end, double head)
    {
        var back = end > start ? -1 : 1;
        var neck = end + (back * head * 1.6);
        return
        [
            Halo([PathStep.Move(x, start), PathStep.Line(x, neck)]),
            Body(
                x,
                start,
                head,
                [
                    PathStep.Move(x, start), PathStep.Line(x, neck),
                    PathStep.Move(x, end), PathStep.Line(x - head, neck), PathStep.Line(x + head, neck), PathStep.Close,
                ]),
        ];
    }

    /// <summary>An arrow to the right, two shapes.</summary>
    public static IEnumerable<Mark> Level(double start, double end, double y, double head)
    {
        var neck = end - (head * 1.6);
        return
        [
            Halo([PathStep.Move(start, y), PathStep.Line(neck, y)]),
            Body(
                start,
                y,
                head,
                [
                    PathStep.Move(start, y), PathStep.Line(neck, y),
                    PathStep.Move(end, y), PathStep.Line(neck, y - head), PathStep.Line(neck, y + head), PathStep.Close,
                ]),
        ];
    }

    /// <summary>An arrow that goes right, then up or down, two shapes.</summary>
    public static IEnumerable<Mark> Elbow(double startX, double startY, double endX, double endY, double head)
    {
        var neck = endY + ((endY > startY ? -1 : 1) * head * 1.6);
        return
        [
            Halo([PathStep.Move(startX, startY), PathStep.Line(endX, startY), PathStep.Line(endX, neck)]),
            Body(
                startX,
                startY,
                head,
                [
                    PathStep.Move(startX, startY), PathStep.Line(endX, startY), PathStep.Line(endX, neck),
                    PathStep.Line(endX, startY),
                    PathStep.Move(endX, endY), PathStep.Line(endX - head, neck), PathStep.Line(endX + head, neck),
                    PathStep.Close,
                ]),
        ];
    }

    private static Outline Halo(ReadOnlySpan<PathStep> line) =>
        new([.. line], default) { Edge = Role.Paper, EdgeWidth = 4.5 };

    private static Outline Body(double x, double y, double head, ReadOnlySpan<PathStep> steps)
    {
        var dot = head * 0.55;
        var all = new List<PathStep>();
        all.AddRange(steps);
        all.AddRange(
        [
            PathStep.Move(x - dot, y),
            PathStep.Curve(x - dot, y - (dot * 1.33), x + dot, y - (dot * 1.33), x + dot, y),
            PathStep.Curve(x + dot, y + (dot * 1.33), x - dot, y + (dot * 1.33), x - dot, y),
            PathStep.Close,
        ]);
        return new([.. all], Role.Text) { Edge = Role.Text, EdgeWidth = 1.8 };
    }
}
