using Rookery.Traces.Measuring;

namespace Rookery.Simulation.Tests;

/// <summary>Each pair of option values either runs the program to its end or is refused with a reason.</summary>
public sealed class SchedulerPairTests
{
    private static readonly string[] Bases =
        ["work-stealing", "work-first", "shared-queue", "thread-per-task", "greedy"];

    public static TheoryData<string, string> OptionPairs()
    {
        var data = new TheoryData<string, string>();
        string[] options = [.. Scheduler.OptionNames.Where(o => o != "patience")];
        for (int a = 0; a < options.Length; a++)
        {
            for (int b = a + 1; b < options.Length; b++)
                data.Add(options[a], options[b]);
        }

        return data;
    }

    [Theory]
    [MemberData(nameof(OptionPairs))]
    public void Record_EachPairOfValues_FinishesStarvesOrIsRefused(string first, string second)
    {
        foreach (string a in Scheduler.WordsOf(first))
        {
            foreach (string b in Scheduler.WordsOf(second))
            {
                foreach (Machine machine in Machine.Presets)
                {
                    foreach (string name in Bases)
                        Check(SimulatorTests.Named(name).With(first, a).With(second, b), machine);
                }
            }
        }
    }

    private static void Check(Scheduler scheduler, Machine machine)
    {
        if (scheduler.Refusal() is { } refusal)
        {
            Assert.NotEmpty(refusal.Hint);
            return;
        }

        // A short slice where workers share cores: with milliseconds a spinning worker fills the trace with its looks.
        CheckRun(scheduler, machine, 1);
        CheckRun(scheduler, machine, 3);
        CheckRun(scheduler, machine with { Cores = 2, Slice = 500 }, 5);
    }

    private static void CheckRun(Scheduler scheduler, Machine machine, int workers)
    {
        var settings = new RunSettings
        {
            Workers = workers,
            Scheduler = scheduler,
            Machine = machine,
            Limits = new() { EventsMax = 200_000 },
        };
        var program = Testing.Fj.Bind(
            SimulatorTests.Fibonacci.Replace("size = 10", "size = 5", StringComparison.Ordinal));
        RunResult recorded = Simulator.Record(program, settings);
        RunResult measured = Simulator.Measure(program, settings);
        Assert.Equal(recorded.Measures, measured.Measures);
        if (recorded.Starvation is not null)
        {
            // Waiting workers take nothing; and a helper of a child-first scheduler may lay an ancestor on top of the
            // very task that the ancestor awaits.
            Assert.True(
                scheduler.AtJoin == AtJoin.Wait
                || (scheduler.ForkRuns == ForkRuns.Child && scheduler.AtJoin is AtJoin.Help or AtJoin.Leapfrog),
                $"{scheduler} starved on {workers} workers of {machine}.");
            return;
        }

        Measures measures = recorded.Measures;
        Assert.Equal((29L, 10L, 15L), (measures.Work, measures.Span, measures.Tasks));
        Assert.True(measures.Makespan * measures.Cores >= measures.Work);
        Assert.True(measures.Makespan >= measures.Span);
    }
}
