using Rookery.Measuring.Plans;
using Rookery.Programs;

namespace Rookery.Measuring.Tests;

public sealed class WarmUpTests
{
    // A method is compiled well once it was called 30 times: that has to happen whatever it takes.
    [Fact]
    public void Of_SomethingQuick_CallsItOftenEnoughForTheCompiler()
    {
        int calls = 0;
        double shortest = WarmUp.Of(() => calls++, CancellationToken.None);
        Assert.InRange(calls, 60, 15 * 40);
        Assert.InRange(shortest, 0, double.MaxValue);
    }

    [Fact]
    public void Of_SomethingThatIsCancelled_Ends()
    {
        using var stop = new CancellationTokenSource();
        int calls = 0;
        Assert.Throws<OperationCanceledException>(() => WarmUp.Of(
            () =>
            {
                if (++calls == 50)
                    stop.Cancel();
            },
            stop.Token));
        Assert.Equal(50, calls);
    }

    // Waiting would take an hour: that it comes back says that it neither works nor waits.
    [Fact]
    public void Read_APlanWithoutWork_ReadsItWithoutWorkingOrWaiting()
    {
        Plan plan = PlanOf("""
            task leaf(n)
                block 3600000000
                work n
            task many(n)
                for i in 0..n
                    fork leaf(i + 1)
                work 3600000000
                call leaf(1)
                join
            start many(20)
            """);
        Assert.Equal(22, plan.Pieces);
        new PlanWalk(PlanRun.WithoutWork(plan)).Read();
    }

    [Fact]
    public void Read_APlanNestedTooDeepForTheThread_ComesBack()
    {
        Plan plan = PlanOf("""
            task down(n)
                if n > 0
                    fork down(n - 1)
                    join
                work 1
            start down(90000)
            """);
        var thread = new Thread(new PlanWalk(PlanRun.WithoutWork(plan)).Read, maxStackSize: 256 * 1024);
        thread.Start();
        thread.Join();
        Assert.Equal(90_001, plan.Count);
    }

    private static Plan PlanOf(string text)
    {
        var limits = EvaluationLimits.Default with { Depth = 100_000 };
        BoundProgram program = ProgramReader.Read("test.fj", text).OrThrow()
            .Bind(BindInputs.Default with { Limits = limits }).OrThrow();
        return Plan.Of(program, 1_000_000, CancellationToken.None);
    }
}
