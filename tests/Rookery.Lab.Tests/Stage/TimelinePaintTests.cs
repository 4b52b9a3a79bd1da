using Rookery.Lab.Runs;
using Rookery.Lab.Session;
using Rookery.Lab.Stage;
using Rookery.Lab.Tests.Support;
using Rookery.Traces;

namespace Rookery.Lab.Tests.Stage;

public sealed class TimelinePaintTests
{
    [Theory]
    [InlineData(0, 1)]
    [InlineData(0.25, 0.5)]
    [InlineData(0.5, 0.5001)]
    [InlineData(0.9, 1)]
    public async Task Links_OfAnyWindow_AreTheStealsWithinIt(double from, double to)
    {
        LabRun run = await Made.RunAsync("fibonacci.fj", "machine=unit workers=4 set.n=10");
        var window = new TimeWindow();
        window.Fit(run.Trace.Makespan);
        window.Zoom(from, 1 / (to - from));
        double[] links = new double[3 * TimelinePaint.LinksMax];
        int used = TimelinePaint.Links(run, window, 4, links);

        var expected = Enumerable.Range(0, run.Trace.Count).Select(step => run.Trace[step])
            .Where(item => item.Kind == EventKind.Steal && item.Time >= window.From && item.Time <= window.To)
            .SelectMany(item => (double[])[window.ShareOf(item.Time), item.Other, item.Worker]);
        Assert.Equal(expected, links[..used]);
        Assert.True(from > 0 || used > 0);
    }

    [Fact]
    public async Task Links_MoreThanCanBeTold_AreNone()
    {
        LabRun run = await Made.RunAsync("fibonacci.fj", "machine=unit workers=4 set.n=10");
        var window = new TimeWindow();
        window.Fit(run.Trace.Makespan);
        Assert.InRange(run.Measures.Steals, 3, long.MaxValue);
        Assert.Equal(0, TimelinePaint.Links(run, window, 4, new double[3]));
    }

    // A worker without a row has no links, and takes none from the others.
    [Fact]
    public async Task Links_OfWorkersWithoutARow_AreLeftOut()
    {
        LabRun run = await Made.RunAsync("fibonacci.fj", "machine=unit workers=4 set.n=10");
        var window = new TimeWindow();
        window.Fit(run.Trace.Makespan);
        double[] links = new double[3 * TimelinePaint.LinksMax];
        int used = TimelinePaint.Links(run, window, 2, links);
        for (int i = 0; i < used; i += 3)
            Assert.True(links[i + 1] < 2 && links[i + 2] < 2);
    }
}
