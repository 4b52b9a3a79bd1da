using System.Globalization;
using Rookery.Simulation;
using Rookery.Testing;
using Rookery.Traces;
using Rookery.Traces.Measuring;

namespace Rookery.Reference.Tests;

/// <summary>What the papers on work stealing prove, tried on runs.</summary>
public sealed class WorkStealingReferences
{
    private static readonly ProgramGenOptions Computing = new(TasksMax: 400, ActionsMax: 4_000, WithBlock: false);

    // R. D. Blumofe, C. E. Leiserson, "Scheduling multithreaded computations by work stealing", J. ACM 46(5), 1999: a
    // fully strict computation needs space S_P <= P * S_1. It holds for child-first runs that suspend at joins (busy
    // leaves).
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

    // On the ideal machine each worker does, in each unit of time, one unit of work or one look: so looks = P * Tp -
    // T1. Source of the identity: M. Tchiboukdjian, N. Gast, D. Trystram, J.-L. Roch, J. Bernard, "A tighter analysis
    // of work stealing", ISAAC 2010.
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

    // Blumofe and Leiserson: expected time T1/P + O(Tinf), expected steals O(P * Tinf). The constants found are those
    // of docs/measures.md: they hardly grow with the program or with the workers.
    [Theory]
    [InlineData(2)]
    [InlineData(8)]
    [InlineData(32)]
    public void Makespan_ManySeeds_ExceedsTheShareByTheDocumentedMultipleOfTheSpan(int workers)
    {
        string document = File.ReadAllText(RepositoryFile.At("docs/measures.md"));
        foreach (int depth in (int[])[6, 8, 10, 12])
        {
            string text = Tree(depth);
            const int seeds = 20;
            Measures[] runs = [.. Enumerable.Range(1, seeds).Select(s => Runs.Of(text, Runs.Settings(workers), s))];
            double span = runs[0].Span;
            double excess = runs.Average(m => m.Makespan - ((double)m.Work / workers)) / span;
            double steals = runs.Average(m => (double)m.Steals) / (workers * span);
            Assert.InRange(excess, 0, 3);
            Assert.InRange(steals, 0, 1);
            string row = string.Create(
                CultureInfo.InvariantCulture,
                $"| {workers} | {depth} | {runs[0].Work:N0} | {span} | {excess:F2} | {steals:F2} |");
            Assert.Contains(row, document, StringComparison.Ordinal);
        }
    }

    // D. B. Wagner, B. G. Calder, "Leapfrogging", PPoPP 1993 (from memory): a worker that waits for a stolen child
    // steals only from that child's thief, and so only parts of what it waits for: its stack is never deeper than the
    // serial one.
    [Fact]
    public void StackDepth_Leapfrogging_IsAtMostTheSerialDepth() =>
        Gen.Select(ProgramGen.BoundOf(Computing), Gen.Int[1, 10]).Sample(
            (program, workers) =>
            {
                RunSettings settings = Runs.Settings(workers) with { Scheduler = new() { AtJoin = AtJoin.Leapfrog } };
                Measures m = Runs.Of(program, settings);
                return m.StackDepth <= m.Deepest;
            },
            iter: 2_000);

    // The same paper's reason: a worker that helps anyone may pile tasks upon the one that waits.
    [Fact]
    public void StackDepth_HelpingAnyone_ExceedsTheSerialDepthInSomeRun() =>
        Assert.Contains(
            Enumerable.Range(1, 50), seed =>
            {
                Measures m = Runs.Of(Tree(9), Runs.Settings(6), seed);
                return m.StackDepth > m.Deepest;
            });

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

    // Tchiboukdjian, Gast, Trystram, Roch, Bernard, "A tighter analysis of work stealing", ISAAC 2010 (abstract): W
    // unit independent tasks that start on one of m processors, thieves that take half: W/m and 3.65 log2 W on average.
    [Theory]
    [InlineData(4, 256)]
    [InlineData(16, 1_024)]
    [InlineData(16, 4_096)]
    [InlineData(64, 4_096)]
    public void Makespan_UnitTasksAndStealingHalf_StaysBelowThePublishedBound(int workers, int tasks)
    {
        string text = $"""
            task unit()
                work 1
            task all()
                for i in 0..{tasks}
                    fork unit()
            start all()
            """;
        RunSettings settings = Runs.Settings(workers) with { Scheduler = new() { Amount = StealAmount.Half } };
        double excess = Enumerable.Range(1, 40).Average(
            seed => Runs.Of(text, settings, seed).Makespan - ((double)tasks / workers));
        Assert.InRange(excess, 0, (3.65 * Math.Log2(tasks)) + 1);
    }

    // N. S. Arora, R. D. Blumofe, C. G. Plaxton, "Thread scheduling for multiprogrammed multiprocessors", SPAA 1998
    // (from memory): fewer than 32 * P * Tinf steal attempts on average.
    [Theory]
    [InlineData(4)]
    [InlineData(32)]
    public void Probes_ManySeeds_AreBelowThePublishedBound(int workers)
    {
        RunSettings settings = Runs.Settings(workers, "work-first");
        Measures[] runs = [.. Enumerable.Range(1, 20).Select(s => Runs.Of(Tree(9), settings, s))];
        Assert.InRange(runs.Average(m => (double)m.Probes), 1, 32.0 * workers * runs[0].Span);
    }

    // Y. Guo, R. Barik, R. Raman, V. Sarkar, "Work-first and help-first scheduling policies for async-finish task
    // parallelism", IPDPS 2009 (abstract): each policy wins on some programs. Help-first spreads a flat loop of forks
    // sooner; work-first needs less space in a deep recursion.
    [Fact]
    public void ForkRuns_FlatLoopAndDeepTree_EachPolicyWinsOnce()
    {
        const string flat = """
            task item()
                work 40
            task loop()
                for i in 0..200
                    fork item()
            start loop()
            """;
        var machine = Machine.Ideal with { Steal = 20 };
        Measures helpFlat = Runs.Of(flat, Runs.Settings(16) with { Machine = machine });
        Measures workFlat = Runs.Of(flat, Runs.Settings(16, "work-first") with { Machine = machine });
        Assert.True(helpFlat.Makespan < workFlat.Makespan, $"{helpFlat.Makespan} and {workFlat.Makespan}");
        Assert.True(workFlat.LiveTasks < helpFlat.LiveTasks, $"{workFlat.LiveTasks} and {helpFlat.LiveTasks}");
    }

    // Cilk-5 paper and textbook model of time, T1/P + Tinf (Cormen et al., 3rd ed. section 27.1, the chess program;
    // from memory): 2048 and 1 against 1024 and 8 units cross between 146 and 147 processors.
    [Theory]
    [InlineData(32, 65, 40)]
    [InlineData(512, 5, 10)]
    public void TimeModel_ChessProgram_IsAsInTheTextbook(int workers, int original, int optimised)
    {
        Assert.Equal(original, TimeModel.Expected(2048, 1, workers).ToDouble());
        Assert.Equal(optimised, TimeModel.Expected(1024, 8, workers).ToDouble());
        Assert.Equal(146, TimeModel.LastWorkersWhereFaster((1024, 8), (2048, 1)));
    }

    private static string Tree(int depth) => $"""
        task tree(n)
            work 1
            if n > 0
                fork tree(n - 1)
                call tree(n - 1)
                join
                work 1
        start tree({depth})
        """;
}
