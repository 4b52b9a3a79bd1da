using Rookery.Lab.Runs;
using Rookery.Simulation;
using Rookery.Traces.Replaying;

namespace Rookery.Lab.Tests.Runs;

public sealed class StretchIndexTests
{
    public static TheoryData<string, string> Cases => new()
    {
        { "fibonacci.fj", "workers=5 machine=unit seed=3" },
        { "seabird/count-uneven.fj", "workers=8 machine=typical when-idle=sleep patience=2" },
        { "starves.fj", "workers=2 scheduler=shared-queue" },
        { "merge-sort.fj", "workers=3 cores=2 machine=unit" },
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void SumsAt_TheEnd_ComputingIsTheWork(string program, string setup)
    {
        RunResult run = DemoTrace.Of(program, setup);
        StretchIndex index = DemoTrace.IndexOf(run);
        Span<double> sums = stackalloc double[StretchIndex.Lanes];
        double computing = 0;
        for (int worker = 0; worker < index.Workers; worker++)
        {
            index.SumsAt(worker, run.Trace!.Makespan, sums);
            computing += sums[0];
        }

        Assert.Equal(run.Measures.Work, (long)computing);
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void SumsAt_AnyTime_AreThoseOfThePlainestCount(string program, string setup)
    {
        RunResult run = DemoTrace.Of(program, setup);
        StretchIndex index = DemoTrace.IndexOf(run, 7);
        double[] sums = new double[StretchIndex.Lanes];
        for (int part = 0; part <= 16; part++)
        {
            double time = run.Trace!.Makespan * part / 16.0;
            for (int worker = 0; worker < index.Workers; worker++)
            {
                index.SumsAt(worker, time, sums);
                double[] plain = PlainSums(run, worker, time);
                for (int lane = 0; lane < StretchIndex.Lanes; lane++)
                    Assert.Equal(plain[lane], sums[lane], 6);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void SumsOn_TimesThatGrow_AreThoseOfSumsAt(string program, string setup)
    {
        RunResult run = DemoTrace.Of(program, setup);
        StretchIndex index = DemoTrace.IndexOf(run);
        double[] sums = new double[StretchIndex.Lanes];
        double[] on = new double[StretchIndex.Lanes];
        foreach (int parts in (int[])[3, 50, 5_000])
        {
            for (int worker = 0; worker < index.Workers; worker++)
            {
                int place = index.Within(worker, 0, run.Trace!.Makespan).First;
                for (int part = 0; part <= parts; part++)
                {
                    double time = run.Trace.Makespan * (double)part / parts;
                    place = index.SumsOn(worker, time, on, place);
                    index.SumsAt(worker, time, sums);
                    Assert.Equal(sums, on);
                }
            }
        }
    }

    [Fact]
    public void Within_AWindow_BeginsWithTheStretchThatReachesIntoIt()
    {
        RunResult run = DemoTrace.Of("fibonacci.fj", "workers=3 machine=unit");
        StretchIndex index = DemoTrace.IndexOf(run);
        (int first, int end) = index.Within(1, 40, 60);
        Assert.True(run.Trace![index.StepAt(first)].Time <= 40);
        Assert.True(run.Trace[index.StepAt(first + 1)].Time > 40);
        Assert.True(run.Trace[index.StepAt(end - 1)].Time <= 60);
        for (int place = first; place < end; place++)
            Assert.Equal(1, run.Trace[index.StepAt(place)].Worker);
    }

    private static double[] PlainSums(RunResult run, int worker, double time)
    {
        double[] sums = new double[StretchIndex.Lanes];
        double since = -1;
        int lane = 0;
        for (int step = 0; step < run.Trace!.Count && run.Trace[step].Time <= time; step++)
        {
            if (run.Trace[step].Worker != worker)
                continue;
            if (since >= 0)
                sums[lane] += run.Trace[step].Time - since;
            since = run.Trace[step].Time;
            lane = StretchIndex.LaneOf(Stretches.After(run.Trace[step].Kind));
        }

        if (since >= 0)
            sums[lane] += time - since;
        return sums;
    }
}
