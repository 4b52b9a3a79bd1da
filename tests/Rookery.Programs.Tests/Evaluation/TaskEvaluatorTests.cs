using Rookery.Testing;

namespace Rookery.Programs.Tests.Evaluation;

public sealed class TaskEvaluatorTests
{
    private const string Count = """
        param grain = 25 in 1..1000
        data tiles = "tiles.csv" column "us"

        task count(lo, hi)
            if hi - lo <= grain
                work sum(tiles, lo, hi)
            else
                let mid = lo + (hi - lo) / 2
                fork count(lo, mid)
                call count(mid, hi)
                join
                work 2                         # add the two totals

        start count(0, len(tiles))
        """;

    [Fact]
    public void Evaluation_DesignExample_ActsInTheOrderOfTheText()
    {
        string tiles = "tile,us\n" + string.Concat(Enumerable.Range(0, 50).Select(i => $"{i},{i + 1}\n"));
        var run = SerialRun.Of(Fj.Bind(Count, tiles: tiles), withLog: true);
        Assert.Equal(
            [
                "9: count(0, 50) Fork count(0, 25)",
                "6: count(0, 25) Work 325",
                "12: count(0, 25) End",
                "10: count(0, 50) Call count(25, 50)",
                "6: count(25, 50) Work 950",
                "12: count(25, 50) End",
                "11: count(0, 50) Join",
                "12: count(0, 50) Work 2",
                "12: count(0, 50) End",
            ],
            run.Log);
        Assert.Equal((3, 1, 1277, 952, 2), (run.Tasks, run.Forks, run.Work, run.Span, run.Deepest));
    }
}
