using Rookery.Notation;
using Rookery.Testing;

namespace Rookery.Programs.Tests.Analyses;

public sealed class ProgramAnalysisTests
{
    private const long Tera = 1L << 40;

    private static (long Work, long Span, long Deepest) Shape(Analysis analysis) =>
        (analysis.Work, analysis.Span, analysis.Deepest);

    [Theory]
    [InlineData("lo + (hi - lo) / 2")]
    [InlineData("(lo + hi) / 2")]
    [InlineData("hi - (hi - lo + 1) / 2")]
    public void Analysis_BalancedProgramOfTera_ComesAtOnce(string middle)
    {
        var program = Fj.Bind(
            $"""
            task count(lo, hi)
                if hi - lo <= 1
                    work 3
                else
                    let mid = {middle}
                    fork count(lo, mid)
                    call count(mid, hi)
                    join
                    work 2
            start count(0, 1 << 40)
            """);
        var analysis = ProgramAnalysis.Analyse(program, new(Steps: 5_000));
        Assert.Equal(new((2 * Tera) - 1, Tera - 1, (3 * Tera) + (2 * (Tera - 1)), 3 + (2 * 40), 41), analysis);
    }

    [Fact]
    public void Analysis_LoopThatUsesThousandsOfNames_StaysSmall()
    {
        var names = Enumerable.Range(0, 5_000).ToList();
        string text = "task t(n)\n" + string.Concat(names.Select(i => $"    let v{i} = n\n"))
            + "    fork for i in 0..2\n" + string.Concat(names.Select(i => $"        work v{i}\n")) + "start t(1)";
        long before = GC.GetAllocatedBytesForCurrentThread();
        Assert.Equal(new(4, 2, 10_000, 5_000, 3), ProgramAnalysis.Analyse(Fj.Bind(text)));
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 100_000_000);
    }

    [Fact]
    public void Analysis_SixteenArguments_AreStillShifted()
    {
        string names = string.Join(", ", Enumerable.Range(0, 14).Select(i => $"a{i}"));
        var program = Fj.Bind(
            $"""
            task t(lo, hi, {names})
                if hi - lo > 1
                    fork t(lo, (lo + hi) / 2, {names})
                    call t((lo + hi) / 2, hi, {names})
                work 1 + a3 - a7
            start t(0, 1 << 30, {string.Join(", ", Enumerable.Repeat("5", 14))})
            """);
        Assert.Equal((2L << 30) - 1, ProgramAnalysis.Analyse(program, new(Steps: 5_000)).Tasks);
    }

    [Fact]
    public void Analysis_TwoDimensions_ShiftsEachByItself()
    {
        // 2^20 by 2^20 squares, quartered: every square of one size costs the same, wherever it lies.
        var program = Fj.Bind(
            """
            task quarter(x, y, to_x, to_y)
                if to_x - x <= 1
                    work 1
                else
                    let mid_x = (x + to_x) / 2
                    let mid_y = (y + to_y) / 2
                    fork quarter(x, y, mid_x, mid_y)
                    fork quarter(mid_x, y, to_x, mid_y)
                    fork quarter(x, mid_y, mid_x, to_y)
                    call quarter(mid_x, mid_y, to_x, to_y)
            start quarter(0, 0, 1 << 20, 1 << 20)
            """);
        Assert.Equal((Tera, 1, 21), Shape(ProgramAnalysis.Analyse(program, new(Steps: 5_000))));
    }

    [Fact]
    public void Analysis_Endless_StopsAtItsLimits()
    {
        var deep = Assert.Throws<InputException>(
            () => ProgramAnalysis.Analyse(Fj.Bind("task t(n)\n    fork t(n + 1)\nstart t(0)")));
        Assert.Equal(("FJ061", true), (deep.Diagnostics[0].Code, deep.IsLimit));
        var wide = Assert.Throws<InputException>(
            () => ProgramAnalysis.Analyse(
                Fj.Bind("task t(n)\n    for i in 0..1 << 60\n        call u(i)\ntask u(i)\n    work i\nstart t(0)"),
                new(Steps: 10_000)));
        Assert.Equal(("FJ066", true), (wide.Diagnostics[0].Code, wide.IsLimit));
        var huge = Assert.Throws<InputException>(
            () => ProgramAnalysis.Analyse(
                Fj.Bind("task t(n)\n    if n > 0\n        fork t(n - 1)\n        call t(n - 1)\nstart t(70)")));
        Assert.Equal(("FJ048", false), (huge.Diagnostics[0].Code, huge.IsLimit));
    }

    [Fact]
    public void Analysis_FullMemo_StaysExact()
    {
        var program = Fj.Bind(
            "task t(n)\n    work pick(0, 9, n)\n    if n > 1\n        fork t(n - 1)\n        fork t(n - 2)\n"
            + "start t(16)");
        Assert.Equal(ProgramAnalysis.Analyse(program), ProgramAnalysis.Analyse(program, new(Entries: 3)));
    }

    [Fact]
    public void Analysis_ParallelLoopOfTera_ComesAtOnce()
    {
        var program = Fj.Bind(
            """
            task run(n, cost)
                fork for i in 0..n grain 4
                    work cost
            start run(1 << 40, 5)
            """);
        var analysis = ProgramAnalysis.Analyse(program, new(Steps: 5_000));

        // 2^38 leaves of four rounds each, forked by halving, below the first task.
        Assert.Equal(new(Tera / 2, Tera / 4, 5 * Tera, 20, 40), analysis);
    }
}
