using Rookery.Simulation;
using Rookery.Testing;
using Rookery.Traces;
using Rookery.Traces.Measuring;

namespace Rookery.Reference.Tests;

/// <summary>What the papers on work stealing prove, tried on runs.</summary>
public sealed class WorkStealingReferences
{
    private static readonly ProgramGenOptions Computing = new(TasksMax: 400, ActionsMax: 4_000, WithBlock: false);

    // R. D. Blumofe, C. E. Leiserson, "Scheduling multithreaded computations by work stealing", J. ACM 46(5), 1999: a fully
    // strict computation needs space S_P <= P * S_1. It holds for child-first runs that suspend at joins (busy leaves).
    [Fact]
    public void LiveTasks_ChildFirstRuns_AreAtMostTheSerialSpaceTimesTheWorkers() =>
        Gen.Select(ProgramGen.BoundOf(Computing), Gen.Int[1, 10]).Sample(
            (program, workers) =>
            {
                Measures m = Runs.Of(program, Runs.Settings(workers, "work-first"));
                return m.LiveTasks <= workers * m.Deepest;
            },
            iter: 2_000);

    // D. Spoonhower, G. E. Blelloch, P. B. Gibbons, R. Harper, "Beyond nested parallelism", SPAA 2009; U. A. Acar,
    // G. E. Blelloch, R. D. Blumofe, "The data locality of work stealing", Theory Comput. Syst. 35, 2002 (from memory):
    // in nested-parallel programs the deviations are at most twice the steals.
    [Fact]
    public void Deviations_NestedParallelChildFirstRuns_AreAtMostTwiceTheSteals() =>
        Gen.Select(ProgramGen.BoundOf(Computing), Gen.Int[1, 10]).Sample(
            (program, workers) =>
            {
                Measures m = Runs.Of(program, Runs.Settings(workers, "work-first"));
                return m.Deviations <= 2 * m.Steals;
            },
            iter: 2_000);

    // On the ideal machine each worker does, in each unit of time, one unit of work or one look: so looks = P * Tp - T1.
    // Source of the identity: M. Tchiboukdjian, N. Gast, D. Trystram, J.-L. Roch, J. Bernard, "A tighter analysis of work
    // stealing", ISAAC 2010.
    [Fact]
    public void Probes_IdealMachine_FillAllTimeThatIsNotWork() =>
        Gen.Select(ProgramGen.BoundOf(Computing), Gen.Int[2, 10]).Sample(
            (program, workers) =>
            {
                RunResult result = Runs.Record(program, Runs.Settings(workers));
                Trace trace = result.Trace!;
                long begun = 0;
                for (int step = 0; step < trace.Count; step++)
                {
                    if (trace[step].Kind == EventKind.Probe && trace[step].Time < trace.Makespan)
                        begun++;
                }

                return begun == (workers * trace.Makespan) - result.Measures.Work;
            },
            iter: 500);

    // Blumofe and Leiserson: expected time T1/P + O(Tinf), expected steals O(P * Tinf). The constants found here are in
    // docs/measures.md; the test asks for no more than that they stay bounded while the program grows.
    [Theory]
    [InlineData(2)]
    [InlineData(8)]
    [InlineData(32)]
    public void Makespan_ManySeeds_ExceedsTheShareByABoundedMultipleOfTheSpan(int workers)
    {
        foreach (int depth in (int[])[6, 8, 10, 12])
        {
            string text = $"""
                task tree(n)
                    work 1
                    if n > 0
                        fork tree(n - 1)
                        call tree(n - 1)
                        join
                        work 1
                start tree({depth})
                """;
            const int seeds = 20;
            Measures[] runs = [.. Enumerable.Range(1, seeds).Select(s => Runs.Of(text, Runs.Settings(workers), s))];
            double span = runs[0].Span;
            double excess = runs.Average(m => m.Makespan - ((double)m.Work / workers)) / span;
            double steals = runs.Average(m => (double)m.Steals) / (workers * span);
            Assert.InRange(excess, 0, 4);
            Assert.InRange(steals, 0, 2);
        }
    }

    [Fact]
    public void Record_RandomProgramsOnEveryNamedScheduler_AreLawful() =>
        Gen.Select(ProgramGen.Bound, Gen.Int[1, 6], Gen.Int[0, 4], Gen.Int[0, 2]).Sample(
            (program, workers, scheduler, machine) =>
            {
                RunSettings settings = Runs.Settings(workers, Scheduler.Named[scheduler].Name) with
                {
                    Machine = Machine.Presets[machine],
                };
                RunResult recorded = Runs.Record(program, settings);
                return Simulator.Measure(program, settings).Measures == recorded.Measures;
            },
            iter: 1_000);
}
