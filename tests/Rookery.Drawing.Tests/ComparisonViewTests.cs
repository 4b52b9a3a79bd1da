namespace Rookery.Drawing.Tests;

public sealed class ComparisonViewTests
{
    [Theory]
    [InlineData(2, 1)]
    [InlineData(6, 1)]
    [InlineData(3, 2)]
    [InlineData(64, 1)]
    public void Draw_AnySize_IsSound(int columns, int series)
    {
        foreach (var (width, height, scale) in
            new[] { (1600.0, 900.0, 1.0), (900, 600, 0.7), (1920, 1080, 1.2), (354, 362, 0.6) })
        {
            var frame = new Frame { Width = width, Height = height, TextScale = scale, ShowHeading = false };
            SceneChecks.AssertSound(ComparisonView.Draw(DataOf(columns, series, 20), new() { Frame = frame }));
        }
    }

    // Where they do not fit between their own points and those of the next treatment, they would stand on these.
    [Theory]
    [InlineData(1600, 1, 6)]
    [InlineData(354, 0.6, 0)]
    public void Draw_Means_AreWrittenWhereThereIsRoomForThem(double width, double scale, int expected)
    {
        var frame = new Frame { Width = width, Height = 362, TextScale = scale, ShowHeading = false };
        var scene = ComparisonView.Draw(DataOf(6, 1, 20), new() { Frame = frame });
        Assert.Equal(expected, scene.Shapes().OfType<Text>().Count(text => text.IsBold));
    }

    [Theory]
    [InlineData(200, 40, "400 runs between those of the same rank are not drawn.")]
    [InlineData(2_000, 120, null)]
    public void Draw_MoreRunsThanPointsAskedFor_DrawsEvenlyRankedOnesAndSaysSo(
        int pointsMax, int expected, string? note)
    {
        var scene = ComparisonView.Draw(DataOf(5, 1, 120), new() { PointsMax = pointsMax });
        var groups = scene.Marks.OfType<Group>().Where(one => one.Id.StartsWith("group-", StringComparison.Ordinal));
        foreach (var group in groups)
        {
            var points = group.Shapes().OfType<Disc>().ToList();
            Assert.Equal(expected, points.Count);
            var bar = group.Marks.OfType<Rule>().First();
            Assert.True(points.Min(point => point.Y) <= bar.Y1 && points.Max(point => point.Y) >= bar.Y2);
        }

        var notes = scene.Shapes().OfType<Text>().Select(text => text.Content)
            .Where(text => text.Contains(" not drawn", StringComparison.Ordinal));
        Assert.Equal(note is null ? [] : [note], notes);
    }

    private static ComparisonData DataOf(int columns, int series, int runs)
    {
        var groups = from column in Enumerable.Range(0, columns)
                     from one in Enumerable.Range(0, series)
                     let values = Enumerable.Range(0, runs).Select(run => 28_000.0 + (run * 7 % 97) + (column * 10))
                     select new ComparisonGroup(
                         column, one, [.. values], values.Average(), values.Average() - 20, values.Average() + 20);
        return new()
        {
            Title = "count.fj: makespan by victim",
            Subtitle = "20 seeds each",
            Measure = "makespan (units)",
            ColumnsAre = "victim",
            Columns = [.. Enumerable.Range(0, columns).Select(column => $"choice-{column}")],
            Series = [.. Enumerable.Range(0, series).Select(one => series == 1 ? "" : $"series {one}")],
            Groups = [.. groups],
        };
    }
}
