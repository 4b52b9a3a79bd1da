using Google.OrTools.Sat;
using Rookery.Simulation;
using Rookery.Testing;
using Rookery.Traces.Measuring;

namespace Rookery.Reference.Tests;

/// <summary>
/// The optimum of small programs by a constraint solver (Google OR-Tools, CP-SAT): no simulated run beats it, and
/// greedy runs are within Graham's factor 2 - 1/P of it (R. L. Graham, Bell Syst. Tech. J. 45, 1966).
/// </summary>
public sealed class OptimumReferences
{
    private static readonly ProgramGenOptions Small = new(TasksMax: 14, ActionsMax: 60, WithBlock: false, UnitsMax: 9);

    // A few random programs are hard for any solver; it then gives the range in which the optimum lies, and the checks
    // use the end of it that must hold all the same.
    [Fact]
    public void Makespan_SmallPrograms_IsNeverBelowTheOptimumAndGreedyIsWithinGrahamsFactor()
    {
        int solved = 0, proven = 0;
        Gen.Select(ProgramGen.BoundOf(Small), Gen.Int[2, 3]).Sample(
            (program, workers) =>
            {
                StrandGraph graph = StrandGraph.Of(program);
                if (graph.Lengths.Count is 0 or > 24)
                    return;
                (long least, long most) = Optimum(graph, workers);
                solved++;
                proven += least == most ? 1 : 0;
                foreach ((string name, Scheduler _) in Scheduler.Named)
                {
                    RunResult run = Runs.Record(program, Runs.Settings(workers, name));
                    if (run.Starvation is null)
                        Assert.True(run.Measures.Makespan >= least, $"{name}: {run.Measures.Makespan} < {least}");
                }

                Measures greedy = Runs.Of(program, Runs.Settings(workers, "greedy"));
                Assert.True(greedy.Makespan * workers <= ((2 * workers) - 1) * most);
            },
            iter: 60,
            threads: 1);
        Assert.True(proven * 4 >= solved * 3, $"Only {proven} of {solved} optima were proven.");
    }

    [Fact]
    public void Optimum_FibonacciOnTwoWorkers_IsFoundByHand()
    {
        // P-FIB(2) of unit strands: 5 units of work, span 4; the fork overlaps the two leaves only: 4.
        var program = Fj.Bind("""
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
            start fib(2)
            """);
        Assert.Equal((4, 4), Optimum(StrandGraph.Of(program), 2));
        Assert.Equal((5, 5), Optimum(StrandGraph.Of(program), 1));
    }

    private static (long Least, long Most) Optimum(StrandGraph graph, int workers)
    {
        var model = new CpModel();
        long horizon = graph.Lengths.Sum();
        var starts = new List<IntVar>();
        var ends = new List<IntVar>();
        var intervals = new List<IntervalVar>();
        for (int i = 0; i < graph.Lengths.Count; i++)
        {
            starts.Add(model.NewIntVar(0, horizon, $"s{i}"));
            ends.Add(model.NewIntVar(0, horizon, $"e{i}"));
            intervals.Add(model.NewIntervalVar(starts[i], graph.Lengths[i], ends[i], $"i{i}"));
        }

        CumulativeConstraint cumulative = model.AddCumulative(workers);
        foreach (IntervalVar interval in intervals)
            cumulative.AddDemand(interval, 1);
        foreach ((int before, int after) in graph.Edges)
            model.Add(starts[after] >= ends[before]);
        IntVar makespan = model.NewIntVar(0, horizon, "makespan");
        model.AddMaxEquality(makespan, ends);
        model.Minimize(makespan);
        using var solver = new CpSolver { StringParameters = "num_workers:1,random_seed:1,max_deterministic_time:2" };
        Assert.Contains(solver.Solve(model), (CpSolverStatus[])[CpSolverStatus.Optimal, CpSolverStatus.Feasible]);
        return ((long)Math.Ceiling(solver.BestObjectiveBound - 1e-6), (long)Math.Round(solver.ObjectiveValue));
    }
}
