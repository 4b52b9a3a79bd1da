using Rookery.Experiments.Claims;
using Rookery.Experiments.Statistics;
using Rookery.Experiments.Words;
using Rookery.Notation;
using Rookery.Simulation;
using Rookery.Traces.Measuring;

namespace Rookery.Experiments.Tests.Sweeps;

public sealed class CellRunTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(37)]
    [InlineData(1_000_000)]
    public void Finish_AfterPortionsOfAnySize_IsTheResultOfTheCell(int events)
    {
        var sweep = Sweep.Of(Subjects.Of(), Setup.Plain, [Factor.Parse("workers=1,4", [])], 2);
        CellResult[] expected = Subjects.Audited(sweep);
        for (int cell = 0; cell < sweep.CellCount; cell++)
        {
            CellRun run = sweep.Begin(cell);
            while (!run.IsOver)
                run.Advance(events);
            CellResult made = run.Finish();
            Assert.Equal(expected[cell].Values, made.Values);
            Assert.Equal(cell, made.Cell);
            Assert.Equal(expected[cell].Values[^1].ToDouble(), run.Events);
        }
    }

    [Fact]
    public void Advance_ARunThatReachesALimit_NamesTheTreatmentAndTheSeed()
    {
        Subject small = Subjects.Of() with { Run = new RunLimits { TasksMax = 5 } };
        var sweep = Sweep.Of(small, Setup.Plain, [Factor.Parse("workers=1,4", [])], 1);
        CellRun run = sweep.Begin(1);
        var wrong = Assert.Throws<InputException>(() => run.Advance(1_000_000));
        Assert.Contains("workers 4 and seed 1", wrong.Diagnostics[0].What, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => sweep.Begin(2));
    }

    [Fact]
    public void Decide_InPortions_IsTheDecisionOfTheClaim()
    {
        var claim = new Claim(
            "Thieves that take the oldest steal less often.", Subjects.Of(),
            ("newest", Setup.Read("thief-takes=newest")), ("oldest", Setup.Read("thief-takes=oldest")),
            MeasureNames.Find("steals")!, new(Direction.Lower, new(0.1, true), 0.95), 1, 12);
        CellResult[] cells = Subjects.Audited(claim.ToSweep());
        var decision = new ClaimDecision(claim, cells);
        int portions = 0;
        while (!decision.IsOver)
        {
            decision.Advance(123);
            portions++;
        }

        Assert.Equal((RatioBootstrap.Resamples + 122) / 123, portions);
        Assert.Equal(ClaimWords.English.Reason(claim.Decide(cells)), ClaimWords.English.Reason(decision.Finish()));
        Assert.Equal(claim.Decide(cells).ShareInterval, decision.Finish().ShareInterval);
    }
}
