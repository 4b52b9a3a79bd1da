using System.Collections.Immutable;

namespace Rookery.Drawing.Tests;

public sealed class SpeedUpViewTests
{
    [Fact]
    public void Draw_OneSeries_IsSoundAndMatchesSnapshot()
    {
        var scene = SpeedUpView.Draw(DataOf([1, 2, 4, 8, 16], 5));
        SceneChecks.AssertSound(scene);
        Snapshot.Match(scene, "speed-up-one-series");
    }

    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    [InlineData(6)]
    public void Draw_SeveralSeriesAndSizes_AreSound(int series)
    {
        var data = DataOf([1, 2, 3, 8, 40, 256], 4);
        data = data with { Series = [.. Enumerable.Repeat(data.Series[0], series)] };
        foreach (var (width, height, scale) in
            new[] { (1600.0, 900.0, 1.0), (900, 600, 0.7), (1920, 1080, 1.2), (354, 362, 0.6) })
        {
            var frame = new Frame { Width = width, Height = height, TextScale = scale };
            SceneChecks.AssertSound(SpeedUpView.Draw(data, new() { Frame = frame }));
            SceneChecks.AssertSound(SpeedUpView.Draw(data, new() { Frame = frame, IsLogarithmic = false }));
            SceneChecks.AssertSound(SpeedUpView.Draw(data, new() { Frame = frame, ShowLaws = false }));
            var german = frame with { Words = DrawingWords.German };
            SceneChecks.AssertSound(SpeedUpView.Draw(data, new() { Frame = german }));
        }
    }

    [Fact]
    public void Draw_EachRun_IsAPoint()
    {
        var data = DataOf([1, 2, 4], 5);
        var series = SpeedUpView.Draw(data).Marks.OfType<Group>().Single(group => group.Id == "series-0");
        Assert.Equal(15, series.Marks.OfType<Disc>().Count());
    }

    [Theory]
    [InlineData(80)]
    [InlineData(10)]
    public void Draw_OnAPhone_NamesEveryLineWhole(long span)
    {
        var data = DataOf([1, 2, 4, 16], 4) with { WorkTicks = 160, SpanTicks = span };
        var frame = new Frame { Width = 354, Height = 362, TextScale = 0.6, ShowHeading = false };
        var scene = SpeedUpView.Draw(data, new() { Frame = frame });
        SceneChecks.AssertSound(scene);
        string[] texts = [.. scene.Shapes().OfType<Text>().Select(text => text.Content)];
        Assert.Contains(texts, text => text.EndsWith("  work stealing", StringComparison.Ordinal));
        Assert.Contains("greedy at least", texts);
        Assert.Contains("linear: P", texts);
        Assert.Contains($"T1/Tinf = {160 / span}", texts);
        Assert.DoesNotContain(texts, text => text.Contains('…', StringComparison.Ordinal));
    }

    [Fact]
    public void Draw_ACeilingFarAboveTheFigure_IsNoLineAndNamedNowhere()
    {
        var frame = new Frame { Width = 354, Height = 362, TextScale = 0.6, ShowHeading = false };
        var scene = SpeedUpView.Draw(DataOf([1, 2, 4], 4) with { SpanTicks = 2 }, new() { Frame = frame });
        SceneChecks.AssertSound(scene);
        Assert.DoesNotContain(
            scene.Shapes().OfType<Text>(), text => text.Content.StartsWith("T1/Tinf", StringComparison.Ordinal));
    }

    [Fact]
    public void Draw_TenThousandRuns_StaysUnderTheBudgetAndSaysSo()
    {
        var scene = SpeedUpView.Draw(DataOf([1, 2, 4, 8], 2_500));
        SceneChecks.AssertSound(scene);
        var texts = scene.Shapes().OfType<Text>();
        Assert.Contains(texts, text => text.Content.StartsWith("8,800 runs", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(100, 0)]
    [InlineData(100, 100)]
    [InlineData(100, 400)]
    [InlineData(long.MaxValue, long.MaxValue / 7)]
    public void Draw_ExtremeWorkAndSpan_AreSound(long work, long span)
    {
        var runs = ImmutableArray.Create(new SpeedUpRun(1, work), new SpeedUpRun(2, work / 2), new SpeedUpRun(9, 0));
        var data = new SpeedUpData { Program = "x", WorkTicks = work, SpanTicks = span, Series = [new("one", runs)] };
        SceneChecks.AssertSound(SpeedUpView.Draw(data));
    }

    [Fact]
    public void Draw_NoRuns_SaysSo() =>
        SceneChecks.AssertSound(SpeedUpView.Draw(
            new SpeedUpData { Program = "x", WorkTicks = 5, SpanTicks = 2, Series = [new("one", [])] }));

    [Fact]
    public void GreedyLeast_WorkedExample_IsThePublishedForm() =>
        Assert.Equal(100 / 32.5, SpeedUpView.GreedyLeast(100, 10, 4), 1e-12);

    [Fact]
    public void Draw_SevenSeries_IsRefused()
    {
        var data = DataOf([1], 1);
        data = data with { Series = [.. Enumerable.Repeat(data.Series[0], 7)] };
        Assert.Throws<ArgumentOutOfRangeException>(() => SpeedUpView.Draw(data));
    }

    // Runs near the greedy bound, each seed a little different.
    private static SpeedUpData DataOf(int[] workers, int seeds)
    {
        var runs = workers.SelectMany(count => Enumerable.Range(0, seeds).Select(seed =>
            new SpeedUpRun(count, (980 / count) + 20 + (seed % 50 * 6 / count))));
        var series = new SpeedUpSeries("work stealing", [.. runs]);
        return new() { Program = "halves.fj", WorkTicks = 1_000, SpanTicks = 80, Series = [series] };
    }
}
