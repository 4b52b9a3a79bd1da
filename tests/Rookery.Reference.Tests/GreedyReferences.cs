using Rookery.Simulation;
using Rookery.Testing;
using Rookery.Traces.Measuring;

namespace Rookery.Reference.Tests;

/// <summary>
/// The laws of greedy schedulers. Sources: R. L. Graham, "Bounds for certain multiprocessing anomalies", Bell Syst.
/// Tech. J. 45, 1966; R. P. Brent, "The parallel evaluation of general arithmetic expressions", J. ACM 21, 1974;
/// Cormen, Leiserson, Rivest, Stein, Introduction to Algorithms, 3rd ed. 2009, section 27.1 and exercise 27.1-3 (from
/// memory).
/// </summary>
public sealed class GreedyReferences
{
    // No waiting outside the processor: the bound counts steps in which a processor is idle for want of a ready strand.
    private static readonly ProgramGenOptions Computing = new(TasksMax: 300, ActionsMax: 3_000, WithBlock: false);

    [Fact]
    public void Makespan_GreedyOnRandomPrograms_ObeysGrahamsAndBrentsBounds() =>
        Gen.Select(ProgramGen.BoundOf(Computing), Gen.Int[1, 12]).Sample(
            (program, workers) =>
            {
                Measures m = Runs.Of(program, Runs.Settings(workers, "greedy"));
                return (Int128)workers * m.Makespan >= m.Work
                    && m.Makespan >= m.Span
                    && (Int128)workers * m.Makespan <= m.Work + ((workers - 1) * (Int128)m.Span);
            },
            iter: 3_000);

    [Fact]
    public void Makespan_OneIdealWorker_IsExactlyTheWork() =>
        ProgramGen.BoundOf(Computing).Sample(
            program =>
            {
                Measures m = Runs.Of(program, Runs.Settings(1));
                return m.Makespan == m.Work && m.Work == SerialRun.Of(program).Work && m.Deviations == 0;
            },
            iter: 500);

    [Fact]
    public void Makespan_UnlimitedGreedyWorkers_IsExactlyTheSpan() =>
        ProgramGen.BoundOf(Computing).Sample(
            program =>
            {
                int workers = (int)SerialRun.Of(program).Tasks;
                Measures m = Runs.Of(program, Runs.Settings(workers, "greedy"));
                return m.Makespan == m.Span && m.Span == SerialRun.Of(program).Span;
            },
            iter: 300);

    // Graham 1966: the bound 2 - 1/m is tight. m(m-1) unit tasks and then one of length m, taken in list order.
    [Theory]
    [InlineData(2, 3)]
    [InlineData(3, 5)]
    [InlineData(4, 7)]
    [InlineData(5, 9)]
    [InlineData(6, 11)]
    [InlineData(7, 13)]
    [InlineData(8, 15)]
    public void Makespan_GrahamsBadList_IsTwiceTheOptimumLessOne(int workers, int published)
    {
        string text = $"""
            task job(n)
                work n
            task list()
                for i in 0..{workers * (workers - 1)}
                    fork job(1)
                fork job({workers})
            start list()
            """;
        Scheduler inListOrder = Runs.Settings(workers, "greedy").Scheduler with { OwnerTakes = OwnerTakes.Oldest };
        Assert.Equal(published, Runs.Of(text, Runs.Settings(workers) with { Scheduler = inListOrder }).Makespan);
    }

    [Theory]
    [InlineData(2)]
    [InlineData(5)]
    [InlineData(8)]
    public void Makespan_GrahamsListBackwards_IsTheOptimum(int workers)
    {
        string text = $"""
            task job(n)
                work n
            task list()
                fork job({workers})
                for i in 0..{workers * (workers - 1)}
                    fork job(1)
            start list()
            """;
        Scheduler inListOrder = Runs.Settings(workers, "greedy").Scheduler with { OwnerTakes = OwnerTakes.Oldest };
        Assert.Equal(workers, Runs.Of(text, Runs.Settings(workers) with { Scheduler = inListOrder }).Makespan);
    }

    // R. L. Graham, "Bounds on multiprocessing timing anomalies", SIAM J. Appl. Math. 17, 1969: longest first is tight
    // at 4/3 - 1/(3m): two tasks each of 2m-1, ..., m+1 and three of m take 4m-1.
    [Theory]
    [InlineData(2, 7)]
    [InlineData(3, 11)]
    [InlineData(4, 15)]
    [InlineData(5, 19)]
    [InlineData(6, 23)]
    [InlineData(7, 27)]
    public void Makespan_LongestFirst_IsThePublishedWorstCase(int workers, int published)
    {
        string text = $"""
            task job(n)
                work n
            task list()
                for i in 0..{workers - 1}
                    fork job({(2 * workers) - 1} - i)
                    fork job({(2 * workers) - 1} - i)
                for i in 0..3
                    fork job({workers})
            start list()
            """;
        Scheduler inListOrder = Runs.Settings(workers, "greedy").Scheduler with { OwnerTakes = OwnerTakes.Oldest };
        Assert.Equal(published, Runs.Of(text, Runs.Settings(workers) with { Scheduler = inListOrder }).Makespan);
    }

    // The encyclopaedia article "List scheduling": jobs 4, 5, 6, 7, 8 in order take 18 on two machines and 13 on three.
    [Theory]
    [InlineData(2, 18)]
    [InlineData(3, 13)]
    public void Makespan_FiveJobsInOrder_IsAsInTheArticle(int workers, int published)
    {
        const string text = """
            task job(n)
                work n
            task list()
                for i in 4..9
                    fork job(i)
            start list()
            """;
        Scheduler inListOrder = Runs.Settings(workers, "greedy").Scheduler with { OwnerTakes = OwnerTakes.Oldest };
        Assert.Equal(published, Runs.Of(text, Runs.Settings(workers) with { Scheduler = inListOrder }).Makespan);
    }
}
