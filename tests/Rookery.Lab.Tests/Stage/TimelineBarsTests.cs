using Rookery.Lab.Runs;
using Rookery.Lab.Stage;
using Rookery.Simulation;

namespace Rookery.Lab.Tests.Stage;

public sealed class TimelineBarsTests
{
    [Theory]
    [InlineData(2_000)]
    [InlineData(40)]
    public void Fill_TheWholeRun_ShowsAllTheWorkWhateverTheWidth(int pixels)
    {
        RunResult run = DemoTrace.Of("fibonacci.fj", "workers=4 machine=unit seed=2");
        StretchIndex index = DemoTrace.IndexOf(run);
        var bars = new TimelineBars();
        bars.Fill(run.Trace!, index, 4, 0, run.Trace!.Makespan, pixels);
        double shown = 0;
        for (int i = 0; i < bars.Count; i++)
        {
            Span<double> bar = bars.Numbers.Slice(i * TimelineBars.Stride, TimelineBars.Stride);
            if (bar[3] == 0)
                shown += bar[2] * bar[5] * run.Trace.Makespan;
        }

        // Shares below half a percent of a pixel's time are left out.
        Assert.InRange(shown, run.Measures.Work * 0.99, run.Measures.Work * 1.000001);
    }

    [Fact]
    public void Fill_AWindow_ShowsNothingBeyondIt()
    {
        RunResult run = DemoTrace.Of("merge-sort.fj", "workers=3 machine=unit");
        StretchIndex index = DemoTrace.IndexOf(run);
        var bars = new TimelineBars();
        double middle = run.Trace!.Makespan / 2.0;
        bars.Fill(run.Trace, index, 3, middle, middle * 1.2, 800);
        Assert.True(bars.Count > 0);
        for (int i = 0; i < bars.Count; i++)
        {
            Span<double> bar = bars.Numbers.Slice(i * TimelineBars.Stride, TimelineBars.Stride);
            Assert.InRange(bar[0], 0, 1);
            Assert.InRange(bar[0] + bar[2], 0, 1.000001);
            Assert.InRange(bar[5], 0, 1);
            Assert.InRange(bar[1], 0, 2);
        }
    }
}
