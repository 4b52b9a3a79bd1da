using Rookery.Programs;
using Rookery.Testing;

namespace Rookery.Simulation.Tests;

/// <summary>Memory of a run that keeps no trace: for live tasks, not for events.</summary>
public sealed class AllocationTests
{
    [Theory]
    [InlineData("work-stealing")]
    [InlineData("work-first")]
    [InlineData("greedy")]
    public void Measure_FourTimesTheEvents_AllocatesHardlyMore(string scheduler)
    {
        var settings = new RunSettings
        {
            Workers = 8,
            Scheduler = Scheduler.Named.Single(n => n.Name == scheduler).Scheduler,
        };
        (long events, long bytes) small = Cost(14, settings);
        (long events, long bytes) large = Cost(16, settings);

        Assert.True(large.events > 3 * small.events);
        // A single object an event would be 24 bytes at least.
        Assert.InRange((double)(large.bytes - small.bytes) / (large.events - small.events), -1, 0.25);
    }

    private static (long Events, long Bytes) Cost(int depth, RunSettings settings)
    {
        BoundProgram program = Fj.Bind($"""
            task tree(n)
                work 1
                if n > 0
                    fork tree(n - 1)
                    call tree(n - 1)
                    join
                    work 1
            start tree({depth})
            """);
        _ = Simulator.Measure(program, settings);
        long before = GC.GetAllocatedBytesForCurrentThread();
        RunResult result = Simulator.Measure(program, settings);
        return (result.Measures.Events, GC.GetAllocatedBytesForCurrentThread() - before);
    }
}
