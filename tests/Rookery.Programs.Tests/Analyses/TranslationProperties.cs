using Rookery.Notation;
using Rookery.Testing;

namespace Rookery.Programs.Tests.Analyses;

/// <summary>Results that hold for shifted arguments too, where they stop to hold: at the ends of 64 bits.</summary>
public sealed class TranslationProperties
{
    // Each has a value that grows with the range's place, in different ways.
    private static readonly string[] Shapes =
    [
        "lo + (hi - lo) / 2",
        "(lo + hi) / 2",
        "hi - (hi - lo) / 2",
        "(3 * lo + hi) / 4 + 1",
        "min(lo, hi) + (hi - lo) / 3 + 1",
        "-(-lo - (hi - lo) / 2)",
        "if hi - lo > 9 then lo + 4 else lo + 1",
    ];

    [Fact]
    public void Analysis_AtTheEndsOf64Bits_AgreesWithTheVisitOfEveryTask() =>
        Gen.Select(Gen.Int[0, Shapes.Length - 1], Gen.Int[1, 90], Gen.Long[-100, 100], Gen.Int[0, 6]).Sample(
            (shape, length, offset, end) =>
            {
                Int128 anchor = end switch
                {
                    0 => long.MinValue,
                    1 => long.MinValue / 2,
                    2 => long.MaxValue - length,
                    3 => long.MaxValue / 2,
                    4 => long.MaxValue / 3,
                    5 => long.MinValue / 3,
                    _ => 0,
                };
                var lower = Int128.Clamp(anchor + offset, long.MinValue + 1, long.MaxValue - length);
                var program = Fj.Bind(
                    $"""
                    task count(lo, hi)
                        if hi - lo <= 2
                            work hi - lo + 1
                        else
                            let mid = {Shapes[shape]}
                            fork count(lo, mid)
                            call count(mid, hi)
                            join
                            work 2
                    task twice(lo, hi, by)
                        fork count(lo, hi)
                        call count(lo - by, hi - by)
                    start twice({lower}, {lower + length}, {lower})
                    """);
                Assert.Equal(Visit(program), Analyse(program));
            },
            iter: 3_000);

    [Fact]
    public void Analysis_ParallelLoopAnywhere_AgreesWithTheVisitOfEveryTask() =>
        Gen.Select(Gen.Long, Gen.Int[0, 40], Gen.Int[-1, 9], Gen.Int[0, 3]).Sample(
            (from, length, grain, body) =>
            {
                from = Math.Min(from, long.MaxValue - 100);
                string[] bodies = ["work 2", "work (i - n) % 7", "work i & 3", "fork leaf(i)"];
                var program = Fj.Bind(
                    $"""
                    task run(n)
                        fork for i in n..n + {length} grain {grain}
                            {bodies[body]}
                    task leaf(i)
                        fork for j in i..i + 2
                            work j - i
                    start run({from})
                    """);
                Assert.Equal(Visit(program), Analyse(program));
            },
            iter: 1_000);

    private static string Visit(BoundProgram program)
    {
        try
        {
            var run = SerialRun.Of(program);
            return new Analysis(run.Tasks, run.Forks, run.Work, run.Span, run.Deepest).ToString();
        }
        catch (InputException e)
        {
            return e.Diagnostics[0].Code;
        }
    }

    private static string Analyse(BoundProgram program)
    {
        try
        {
            return ProgramAnalysis.Analyse(program).ToString();
        }
        catch (InputException e)
        {
            return e.Diagnostics[0].Code;
        }
    }
}
