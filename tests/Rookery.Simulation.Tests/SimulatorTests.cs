using Rookery.Notation;
using Rookery.Traces;
using Rookery.Traces.Measuring;

namespace Rookery.Simulation.Tests;

public sealed class SimulatorTests
{
    internal const string Fibonacci = """
        param size = 10 in 0..30
        task fib(n)
            if n < 2
                work 1
            else
                work 1
                fork fib(n - 1)
                work 1
                call fib(n - 2)
                join
                work 1
        start fib(size)
        """;

    internal const string Nested = """
        task chain(n)
            work 1
            if n > 0
                fork chain(n - 1)
                work 1
                join
                work 1
        start chain(6)
        """;

    private static RunResult Run(string text, RunSettings settings, long seed = 1) =>
        Simulator.Record(
            Testing.Fj.Bind(text, seed),
            settings with { Limits = settings.Limits with { EventsMax = 100_000 } });

    [Fact]
    public void Record_OneIdealWorker_TakesExactlyTheWork()
    {
        Measures measures = Run(Fibonacci, new() { Workers = 1 }).Measures;
        Assert.Equal(353, measures.Work);
        Assert.Equal(353, measures.Makespan);
        Assert.Equal(20, measures.Span);
        Assert.Equal(177, measures.Tasks);
        Assert.Equal(0, measures.Steals);
        Assert.Equal(0, measures.Deviations);
    }

    [Fact]
    public void Record_ManyGreedyWorkers_TakesExactlyTheSpan()
    {
        Measures measures = Run(Fibonacci, new() { Workers = 200, Scheduler = Named("greedy") }).Measures;
        Assert.Equal(20, measures.Makespan);
    }

    [Fact]
    public void Record_SharedQueueWithWaitingJoins_StarvesAndNamesTheCycle()
    {
        RunResult result = Run(Nested, new() { Workers = 2, Scheduler = Named("shared-queue") });
        Assert.NotNull(result.Starvation);
        Assert.True(result.Inputs.Starved);
        Assert.Equal(2, result.Starvation.Waits.Length);
        StarvedWait wait = Assert.Single(result.Starvation.Cycle());
        Assert.True(wait.IsQueued);
        Assert.Equal(-1, wait.HeldBy);
    }

    [Fact]
    public void Record_EnoughWorkersForWaitingJoins_Finishes() =>
        Assert.Null(Run(Nested, new() { Workers = 8, Scheduler = Named("shared-queue") }).Starvation);

    [Fact]
    public void Record_ThreadPerTask_StartsAThreadForEachFork()
    {
        Measures measures = Run(Fibonacci, new() { Workers = 4, Scheduler = Named("thread-per-task") }).Measures;
        Assert.Equal(measures.Forks + 1, measures.Workers);
        Assert.Equal(4, measures.Cores);
        Assert.True(measures.Makespan >= 353 / 4.0);
    }

    [Fact]
    public void Record_SameSeedTwice_GivesTheSameEvents()
    {
        var settings = new RunSettings { Workers = 5, Machine = Machine.Unit };
        Trace first = Run(Fibonacci, settings, 7).Trace!;
        Trace second = Run(Fibonacci, settings, 7).Trace!;
        Assert.Equal(first.Count, second.Count);
        for (int i = 0; i < first.Count; i++)
            Assert.Equal(first[i], second[i]);
        Assert.Equal("fib(10)", first.Labels.LabelOf(0));
    }

    [Fact]
    public void Record_LimitOnTasks_EndsWithAnErrorThatNamesIt()
    {
        var settings = new RunSettings { Limits = new() { TasksMax = 50 } };
        InputException error = Assert.Throws<InputException>(() => Run(Fibonacci, settings));
        Assert.True(error.IsLimit);
        Assert.Contains("--limit-tasks", error.Diagnostics[0].Hint, StringComparison.Ordinal);
    }

    [Fact]
    public void Record_FewerCoresThanWorkers_NeverUsesMoreThanThere()
    {
        var settings = new RunSettings
        {
            Workers = 6,
            Machine = Machine.Unit with { Cores = 2, Slice = 5 },
        };
        Measures measures = Run(Fibonacci, settings).Measures;
        Assert.Equal(353, measures.Work);
        Assert.True(measures.Makespan >= 353 / 2.0, $"makespan {measures.Makespan}");
    }

    internal static Scheduler Named(string name) => Scheduler.Named.First(s => s.Name == name).Scheduler;
}
