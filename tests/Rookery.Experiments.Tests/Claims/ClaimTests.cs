using Rookery.Experiments.Claims;
using Rookery.Experiments.Words;
using Rookery.Simulation;
using Rookery.Traces.Measuring;

namespace Rookery.Experiments.Tests.Claims;

public sealed class ClaimTests
{
    [Fact]
    public void Decide_ThievesThatTakeTheNewest_StealMoreOften()
    {
        Claim claim = Of("thief-takes=oldest", "thief-takes=newest", "steals",
            new(Direction.Higher, new(0.5, true), 0.95));
        ClaimResult result = claim.Decide(Subjects.Audited(claim.ToSweep()));
        Assert.Equal(Verdict.Supported, result.Verdict);
        Assert.Equal(20, result.Difference!.Count);
        Assert.Contains("thief-takes=newest", ClaimWords.English.Reason(result), StringComparison.Ordinal);
    }

    [Fact]
    public void Decide_TheOpposite_IsRefuted()
    {
        Claim claim = Of("thief-takes=oldest", "thief-takes=newest", "steals", new(Direction.Lower, default, 0.95));
        Assert.Equal(Verdict.Refuted, claim.Decide(Subjects.Audited(claim.ToSweep())).Verdict);
    }

    [Fact]
    public void Decide_SameOnEverySeed_SaysThatNothingVaries()
    {
        Claim claim = Of("workers=2", "workers=8", "work", new(Direction.Same, new(0.01, true), 0.95));
        ClaimResult result = claim.Decide(Subjects.Audited(claim.ToSweep()));
        Assert.Equal(Verdict.Supported, result.Verdict);
        Assert.Contains("same on every seed", ClaimWords.English.Reason(result), StringComparison.Ordinal);
    }

    [Fact]
    public void Decide_StarvedRuns_AreUndecided()
    {
        Claim claim = Of("workers=1", "scheduler=shared-queue workers=1", "makespan",
            new(Direction.Lower, default, 0.95));
        ClaimResult result = claim.Decide(Subjects.Audited(claim.ToSweep()));
        Assert.Equal(Verdict.Undecided, result.Verdict);
        Assert.Contains("starved", ClaimWords.English.Reason(result), StringComparison.Ordinal);
    }

    [Fact]
    public void Decide_ShareOfAMeanOfZero_IsUndecided()
    {
        Claim claim = Of("workers=1", "workers=4", "steals", new(Direction.Higher, new(0.1, true), 0.95));
        Assert.Equal(Verdict.Undecided, claim.Decide(Subjects.Audited(claim.ToSweep())).Verdict);
    }

    [Fact]
    public void Decide_CellsInAnyOrder_IsTheSame()
    {
        Claim claim = Of("victim=random", "victim=lowest", "makespan", new(Direction.Higher, default, 0.95));
        CellResult[] cells = Subjects.Audited(claim.ToSweep());
        Assert.Equal(
            ClaimWords.English.Reason(claim.Decide(cells)), ClaimWords.English.Reason(claim.Decide(cells.Reverse())));
    }

    internal static Claim Of(string first, string second, string measure, DecisionRule rule) => new(
        "", Subjects.Of(), (first, Setup.Read(first)), (second, Setup.Read(second)), MeasureNames.Find(measure)!, rule,
        1, 20);
}
