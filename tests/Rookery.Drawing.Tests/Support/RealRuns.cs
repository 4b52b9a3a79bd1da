using Rookery.Programs;
using Rookery.Simulation;
using Rookery.Traces;

namespace Rookery.Drawing.Tests;

/// <summary>Simulated runs of a program with uneven leaves.</summary>
internal static class RealRuns
{
    private const string CountText = """
        param size = 600
        task count(lo, hi)
            if hi - lo <= 25
                work (hi - lo) * pick(1, 4, lo)
                block pick(0, 9, lo)
            else
                let mid = lo + (hi - lo) / 2
                fork count(lo, mid)
                call count(mid, hi)
                join
                work 2
        start count(0, size)
        """;

    /// <summary>A run on the machine where each operation takes one unit, with options of the scheduler.</summary>
    public static Trace Count(int workers, long seed, params ReadOnlySpan<(string Option, string Word)> options)
    {
        var scheduler = new Scheduler();
        foreach (var (option, word) in options)
            scheduler = scheduler.With(option, word);
        var inputs = BindInputs.Default with { Seed = seed };
        var program = ProgramReader.Read("count.fj", CountText).Value!.Bind(inputs).Value!;
        var settings = new RunSettings { Workers = workers, Machine = Machine.Unit, Scheduler = scheduler };
        return Simulator.Record(program, settings).Trace!;
    }
}
