using Rookery.Traces;

namespace Rookery.Drawing.Tests;

public sealed class TimelineViewTests
{
    public static TheoryData<string> Edges => [.. EdgeTraces.All().Select(edge => edge.Name)];

    [Theory]
    [MemberData(nameof(Edges))]
    public void Draw_EdgeTrace_IsSound(string name)
    {
        var trace = EdgeTraces.Named(name);
        SceneChecks.AssertSound(TimelineView.Draw(trace));
        SceneChecks.AssertSound(TimelineView.Draw(trace, new() { Colours = TimelineColours.Kind, SpanTicks = 7 }));
        SceneChecks.AssertSound(TimelineView.Draw(trace, new() { From = 3, To = 11 }));
    }

    [Theory]
    [InlineData(900, 600, 0.7)]
    [InlineData(640, 400, 0.6)]
    [InlineData(1920, 1080, 1.2)]
    public void Draw_OtherSizes_AreSound(double width, double height, double scale)
    {
        var options = new TimelineOptions
        {
            SpanTicks = 90,
            Frame = new() { Width = width, Height = height, TextScale = scale },
        };
        SceneChecks.AssertSound(TimelineView.Draw(HalvingRun.Of(4, 24, 7), options));
        SceneChecks.AssertSound(TimelineView.Draw(HalvingRun.Of(30, 240, 7), options));
    }

    [Fact]
    public void Draw_MillionEventsOnManyWorkers_StaysUnderTheBudget()
    {
        var trace = HalvingRun.Of(1_024, 80_000, 3);
        Assert.InRange(trace.Count, 1_000_000, 2_000_000);
        var scene = TimelineView.Draw(trace);
        SceneChecks.AssertSound(scene);
        Assert.InRange(SvgWriter.Write(scene).Length, 1, 2_000_000);
    }

    [Fact]
    public void Draw_SameTrace_SameBytes()
    {
        var first = SvgWriter.Write(TimelineView.Draw(HalvingRun.Of(8, 400, 3)));
        var second = SvgWriter.Write(TimelineView.Draw(HalvingRun.Of(8, 400, 3)));
        Assert.Equal(first, second);
    }

    [Fact]
    public void Draw_FourWorkers_BarsCoverExactlyTheWork()
    {
        var trace = HalvingRun.Of(4, 24, 7);
        var work = WorkOf(trace);
        var scene = TimelineView.Draw(trace, new() { Colours = TimelineColours.Kind, ShowSteals = false });
        var bars = scene.Marks.OfType<Group>().Where(group => group.Id.StartsWith("bars-", StringComparison.Ordinal))
            .SelectMany(group => group.Marks).OfType<Box>().Where(box => box.Fill.Role == Role.Working);
        var lane = scene.Marks.OfType<Group>().Single(group => group.Id == "row-0").Marks.OfType<Box>().Single();
        var ticks = bars.Sum(bar => bar.Place.Width) / lane.Place.Width * trace.Makespan;
        Assert.Equal(work, ticks, 0.001);
    }

    [Fact]
    public void Draw_SharesOfALongRun_AddUpToTheWork()
    {
        var trace = HalvingRun.Of(40, 5_000, 3);
        var plan = TimelinePlan.Of(new TimelineIndex(trace), new(), 30);
        var shares = Assert.IsType<double[,,]>(plan.Shares);
        var sum = 0.0;
        for (var row = 0; row < shares.GetLength(0); row++)
        {
            for (var piece = 0; piece < shares.GetLength(1); piece++)
            {
                for (var lane = 0; lane < Lane.Scheduling; lane++)
                    sum += shares[row, piece, lane];
            }
        }

        var ticks = sum * plan.WorkersInRow * trace.Makespan / shares.GetLength(1);
        Assert.Equal(WorkOf(trace), ticks, WorkOf(trace) * 1e-9);
        Assert.Equal(WorkOf(trace), (double)plan.WorkTicks);
    }

    [Fact]
    public void Draw_FewSteals_EachIsALink()
    {
        var trace = EdgeTraces.Named("asleep and blocked");
        var links = TimelineView.Draw(trace).Marks.OfType<Group>().Single(group => group.Id == "steals");
        Assert.Equal(2, links.Marks.Length);
    }

    [Fact]
    public void Draw_FourWorkers_MatchesSnapshot() =>
        Snapshot.Match(TimelineView.Draw(HalvingRun.Of(4, 24, 7), new() { SpanTicks = 90 }), "timeline-four-workers");

    [Fact]
    public void Draw_LinksBeyondTheRange_IsRefused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            TimelineView.Draw(HalvingRun.Of(1, 2), new() { LinksMax = 401 }));

    private static double WorkOf(Trace trace)
    {
        var since = new long[64];
        Array.Fill(since, -1);
        var sum = 0L;
        for (var step = 0; step < trace.Count; step++)
        {
            var item = trace[step];
            if (since[item.Worker] >= 0)
                sum += item.Time - since[item.Worker];
            since[item.Worker] = item.Kind == EventKind.Work ? item.Time : -1;
        }

        return sum;
    }
}
