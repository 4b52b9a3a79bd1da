using Rookery.Testing;

namespace Rookery.Programs.Tests.Analyses;

public sealed class ProgramAnalysisTests
{
    private const long Tera = 1L << 40;

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
