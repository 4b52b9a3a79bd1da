using Rookery.Lab.Runs;
using Rookery.Lab.Tests.Support;
using Rookery.Lab.Texts;
using Rookery.Lab.WhatIf;
using Rookery.Traces.Measuring;

namespace Rookery.Lab.Tests.WhatIf;

public sealed class RunDifferenceTests
{
    [Fact]
    public async Task Between_TheSameRunTwice_SaysThatNothingDiffers()
    {
        var former = await Made.RunAsync("seabird/count.fj");
        var now = await Made.RunAsync("seabird/count.fj");
        var difference = RunDifference.Between(former, now);
        Assert.True(difference.AreSame);
        Assert.Empty(difference.Inputs);
        Assert.Empty(difference.Told);
        Assert.All(difference.Measures, one => Assert.Equal(0, one.Sign));
        Assert.Single(new DifferenceText(new()).Of(difference));
    }

    [Theory]
    [InlineData("", "workers=8")]
    [InlineData("victim=random", "victim=lowest")]
    [InlineData("", "thief-takes=newest")]
    [InlineData("", "scheduler=greedy")]
    [InlineData("machine=unit", "machine=unit cost.steal=200")]
    [InlineData("workers=3 seed=1", "workers=3 seed=2")]
    [InlineData("when-idle=sleep machine=typical", "when-idle=spin machine=typical")]
    [InlineData("set.grain=25", "set.grain=200")]
    public async Task Between_TwoRuns_IsExactInNumbersAndTellsTwoToFourSentences(string before, string after)
    {
        var former = await Made.RunAsync("seabird/count-uneven.fj", before);
        var now = await Made.RunAsync("seabird/count-uneven.fj", after);
        var difference = RunDifference.Between(former, now);
        foreach (var one in difference.Measures.Where(one => one.Former is { HasValue: true, Denominator: var d }
            && d == 1 && one.Now.Denominator == 1))
        {
            Assert.Equal(one.Now.Numerator - one.Former.Numerator, one.Difference.Numerator);
            Assert.Equal(1, (int)one.Difference.Denominator);
            Assert.Equal(Int128.Sign(one.Now.Numerator - one.Former.Numerator), one.Sign);
        }

        Assert.Equal(FirstDifferent(former, now), difference.FirstDifference);
        Assert.NotEmpty(difference.Inputs);
        foreach (var (code, _) in LabTexts.Languages)
        {
            var texts = new LabTexts();
            texts.Choose(code);
            Assert.InRange(new DifferenceText(texts).Of(difference).Length, 2, 4);
        }
    }

    [Fact]
    public async Task Between_FinishedAndStarved_SaysSoAndComparesNoMakespan()
    {
        var former = await Made.RunAsync("starves.fj");
        var now = await Made.RunAsync("starves.fj", "scheduler=shared-queue");
        Assert.True(now.Trace.Inputs.Starved);
        var difference = RunDifference.Between(former, now);
        Assert.False(difference.Makespan.HasBoth);
        Assert.Contains("starves", new DifferenceText(new()).Of(difference)[0], StringComparison.Ordinal);
    }

    [Fact]
    public async Task Between_RunsOfTwoUnits_ComparesNoTimes()
    {
        var former = await Made.RunAsync("fibonacci.fj");
        var now = await Made.RunAsync("fibonacci.fj", "machine=typical");
        var difference = RunDifference.Between(former, now);
        Assert.False(difference.HasOneUnit);
        Assert.Equal("–", new DifferenceText(new()).Signed(difference.Makespan));
        Assert.True(difference.Find("steals").HasBoth);
    }

    [Fact]
    public async Task Inputs_OfMoreWorkers_LeaveOutWhatFollowsFromThem()
    {
        var former = await Made.RunAsync("fibonacci.fj");
        var now = await Made.RunAsync("fibonacci.fj", "workers=8 set.n=13");
        Assert.Equal(
            [new("workers", "4", "8"), new("n", "12", "13")], RunDifference.Between(former, now).Inputs);
    }

    // By hand: 3/2 less 4/3 is 1/6, and 3/2 over 4/3 is 9/8.
    [Fact]
    public void Difference_OfFractions_IsExact()
    {
        var one = new MeasureDifference(MeasureNames.Find("speedup")!, new(4, 3), new(3, 2), true);
        Assert.Equal(new(1, 6), one.Difference);
        Assert.Equal(new(9, 8), one.Factor);
        Assert.Equal(1, one.Sign);
        Assert.Equal("+0.167", new DifferenceText(new()).Signed(one));
        Assert.Equal("×1.125", new DifferenceText(new()).Factor(one));
    }

    [Fact]
    public void Difference_OfTheLargestNumbers_DoesNotOverflow()
    {
        var huge = new Ratio(Int128.MaxValue, Int128.MaxValue - 1);
        var one = new MeasureDifference(
            MeasureNames.Find("speedup")!, huge, new(Int128.MaxValue - 2, Int128.MaxValue), true);
        Assert.Equal(-1, one.Sign);
        Assert.Equal("–", new DifferenceText(new()).Factor(one));
        var none = one with { Former = default };
        Assert.False(none.HasBoth);
        Assert.Equal("–", new DifferenceText(new()).Signed(none));
        var fromNothing = one with { Former = new(0, 1), Now = new(5, 1) };
        Assert.Equal("+5", new DifferenceText(new()).Signed(fromNothing));
        Assert.Equal("–", new DifferenceText(new()).Factor(fromNothing));
    }

    private static int? FirstDifferent(LabRun former, LabRun now)
    {
        int step = 0;
        while (step < former.Trace.Count && step < now.Trace.Count && former.Trace[step] == now.Trace[step])
            step++;
        return step;
    }
}
