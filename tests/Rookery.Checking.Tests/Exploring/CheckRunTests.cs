using System.Text.Json;
using Rookery.Checking.Tests.Naive;
using Rookery.Checking.Tests.Shipped;

namespace Rookery.Checking.Tests.Exploring;

public sealed class CheckRunTests
{
    [Fact]
    public void Advance_UntilNothingIsLeft_FindsWhatACheckFinds()
    {
        for (ulong seed = 1; seed <= 20; seed++)
        {
            var algorithm = AlgorithmReader.Read("random", RandomAlgorithm.Of(seed)).OrThrow();
            foreach (MemoryModel model in Enum.GetValues<MemoryModel>())
            {
                var options = new CheckOptions { Memory = model };
                var run = new CheckRun(algorithm, "random", options);
                while (run.Advance())
                    Assert.Null(run.Result);
                Assert.Equal(CheckPhase.Done, run.Phase);
                Assert.Equal(
                    JsonSerializer.Serialize(Checker.Check(algorithm, "random", options)),
                    JsonSerializer.Serialize(run.Result));
            }
        }
    }

    [Theory]
    [InlineData(1)]
    [InlineData(7)]
    [InlineData(300)]
    public void Advance_InPortionsOfAnySize_FindsTheSameWitness(int states)
    {
        var algorithm = Shipped("broken/growable-no-owner-fence.dq");
        foreach (string scenario in algorithm.Scenarios)
        {
            var options = new CheckOptions { Memory = MemoryModel.Tso };
            var run = new CheckRun(algorithm, scenario, options with { StatesAtOnce = states });
            while (run.Advance())
            {
            }

            Assert.Equal(
                JsonSerializer.Serialize(Checker.Check(algorithm, scenario, options)),
                JsonSerializer.Serialize(run.Result));
        }
    }

    [Fact]
    public void Advance_OnAShippedDeque_ShowsPhasesInOrderAndStatesThatOnlyGrow()
    {
        var run = new CheckRun(
            Shipped("growable-retry.dq"), "one owner, two thieves", new() { Memory = MemoryModel.Tso });
        var phases = new List<CheckPhase>();
        long states = 0;
        while (run.Advance())
        {
            if (phases.Count == 0 || phases[^1] != run.Phase)
                phases.Add(run.Phase);
            Assert.True(run.Progress.States >= states, "the search forgot states");
            states = run.Progress.States;
        }

        Assert.Equal([CheckPhase.Learning, CheckPhase.Searching, CheckPhase.Classifying], phases);
        Assert.Equal(run.Result!.States, states);
    }

    [Fact]
    public void Progress_ThatSaysNo_EndsTheSearchOutOfTime()
    {
        var run = new CheckRun(
            Shipped("growable.dq"), "one owner, two thieves",
            new() { Progress = progress => progress.States < 500, ClassifiesProgress = false });
        while (run.Advance())
        {
        }

        Assert.Equal(Verdict.OutOfBudget, run.Result!.Verdict);
        Assert.Equal(Budget.Time, run.Result.Exhausted);
    }

    private static Algorithm Shipped(string file) => AlgorithmReader.Read(file, ShippedFiles.Read(file)).OrThrow();
}
