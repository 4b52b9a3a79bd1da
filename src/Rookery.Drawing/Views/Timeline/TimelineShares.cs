using System.Collections.Immutable;

namespace Rookery.Drawing;

/// <summary>One row of a long timeline as areas stacked from the bottom: one area for each kind of doing.</summary>
internal static class TimelineShares
{
    /// <summary>The areas of a row; neighbouring pieces of equal height make one step.</summary>
    public static IEnumerable<Mark> Areas(double[,,] shares, int row, Area place, bool byOrigin)
    {
        var pieces = shares.GetLength(1);
        var ground = new double[pieces];
        var marks = new List<Mark>();
        for (var lane = 0; lane < Lane.Count; lane++)
        {
            var tops = new double[pieces];
            for (var piece = 0; piece < pieces; piece++)
            {
                // A tenth of a pixel is the least that can be seen, and fewer different heights make shorter paths.
                var height = Math.Round(Math.Min(1, shares[row, piece, lane]) * place.Height, 1);
                tops[piece] = Math.Min(place.Height, ground[piece] + height);
            }

            var steps = Skyline(tops, ground, place);
            if (steps.Length > 0)
                marks.Add(new Outline(steps, Lane.InkOf(lane, byOrigin)));
            ground = tops;
        }

        return marks;
    }

    // Each run of pieces along its upper edge to the right and along the lower edge back, so that no seam shows.
    private static ImmutableArray<PathStep> Skyline(double[] tops, double[] ground, Area place)
    {
        var steps = ImmutableArray.CreateBuilder<PathStep>();
        for (var first = 0; first < tops.Length; first++)
        {
            if (tops[first] <= ground[first])
                continue;
            var end = first + 1;
            while (end < tops.Length && tops[end] > ground[end])
                end++;
            steps.Add(PathStep.Move(X(first), place.Bottom - ground[first]));
            for (var piece = first; piece < end; piece++)
                AddStair(piece, piece + 1, piece == end - 1 || tops[piece] != tops[piece + 1], tops[piece]);
            for (var piece = end - 1; piece >= first; piece--)
                AddStair(piece + 1, piece, piece > first && ground[piece] != ground[piece - 1], ground[piece]);
            steps.Add(PathStep.Close);
            first = end;
        }

        return steps.ToImmutable();

        double X(int piece) => place.X + (piece * place.Width / tops.Length);

        void AddStair(int from, int to, bool isLast, double height)
        {
            var y = place.Bottom - height;
            if (steps[^1].Y != y)
                steps.Add(PathStep.Line(X(from), y));
            if (isLast)
                steps.Add(PathStep.Line(X(to), y));
        }
    }
}
