using Rookery.Traces;

namespace Rookery.Drawing.Tests;

public sealed class TimelineIndexTests
{
    public static TheoryData<string> Edges => [.. EdgeTraces.All().Select(edge => edge.Name)];

    [Theory]
    [MemberData(nameof(Edges))]
    public void Fill_EdgeTrace_StaysWithinTheWindow(string name)
    {
        var index = new TimelineIndex(EdgeTraces.Named(name));
        var end = Math.Max(1, index.Trace.Makespan);
        var bars = new TimelineBar[5_000];
        foreach (var (from, to) in new[] { (0L, end), (end / 3, (end / 3) + Math.Max(1, end / 50)), (end - 1, end) })
        {
            var count = index.Fill(from, to, 1_200, 32, bars);
            Assert.InRange(count, 0, bars.Length);
            foreach (var bar in bars.AsSpan(0, count))
            {
                Assert.InRange(bar.Row, 0, 31);
                Assert.True(bar.X0 >= 0 && bar.X1 >= bar.X0 && bar.X1 <= 1_200.5, $"{bar}");
                Assert.True(bar.Y0 >= 0 && bar.Y1 > bar.Y0 && bar.Y1 <= 1.001, $"{bar}");
                Assert.NotEqual(Role.None, bar.Ink.Role);
            }
        }
    }

    [Fact]
    public void Fill_AnyWindow_ShowsAsMuchComputingAsTheEventsTell()
    {
        var trace = HalvingRun.Of(4, 20_000, 11);
        var index = new TimelineIndex(trace);
        while (!index.Advance(1_000))
            Assert.True(trace.Count > 1_000);
        var bars = new TimelineBar[5_000];
        foreach (var divisor in new[] { 1, 2, 7, 40, 900 })
        {
            var length = trace.Makespan / divisor;
            var from = (trace.Makespan - length) / 2;
            var count = index.Fill(from, from + length, 1_000, 8, bars);
            var area = new double[4];
            foreach (var bar in bars.AsSpan(0, count))
            {
                if (bar.Ink.Role == Role.Worker)
                    area[bar.Row] += (bar.X1 - bar.X0) * (bar.Y1 - bar.Y0) / 1_000;
            }

            for (var worker = 0; worker < 4; worker++)
                Assert.Equal(ShareOf(trace, worker, from, from + length), area[worker], 0.02);
        }
    }

    [Fact]
    public void Draw_FromAnIndex_IsTheSameFigure()
    {
        var trace = HalvingRun.Of(4, 9_000, 5);
        var index = new TimelineIndex(trace);
        TimelineOptions[] asked =
        [
            new(), new() { From = 100, To = 900 }, new() { From = 1_000, To = 60_000 }, new() { ShowSteals = false },
        ];
        foreach (var options in asked)
        {
            Assert.Equal(
                SvgWriter.Write(TimelineView.Draw(trace, options)), SvgWriter.Write(TimelineView.Draw(index, options)));
        }
    }

    [Fact]
    public void Fill_WithoutRoom_IsRefused()
    {
        var index = new TimelineIndex(HalvingRun.Of(4, 50, 5));
        Assert.Throws<ArgumentException>(() => index.Fill(0, 100, 500, 4, new TimelineBar[10]));
        Assert.Throws<ArgumentOutOfRangeException>(() => index.Fill(5, 5, 500, 4, new TimelineBar[100]));
        Assert.Throws<ArgumentOutOfRangeException>(() => index.Advance(0));
    }

    // Straight from the events: the stretches after each event of kind work.
    private static double ShareOf(Trace trace, int worker, long from, long to)
    {
        var (sum, since) = (0L, -1L);
        for (var step = 0; step < trace.Count; step++)
        {
            if (trace[step].Worker != worker)
                continue;
            if (since >= 0)
                sum += Math.Max(0, Math.Min(to, trace[step].Time) - Math.Max(from, since));
            since = trace[step].Kind == EventKind.Work ? trace[step].Time : -1;
        }

        return sum / (double)(to - from);
    }
}
