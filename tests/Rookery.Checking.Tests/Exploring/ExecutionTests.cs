using Rookery.Checking.Tests.Naive;
using Rookery.Checking.Tests.Shipped;
using Rookery.Checking.Witnesses;
using Rookery.Checking.Words;

namespace Rookery.Checking.Tests.Exploring;

public sealed class ExecutionTests
{
    private const string Buffering = """
        shared x = 0
        shared y = 0
        operation left()
            x = 1
            let a = y
            return a
        operation right()
            y = 1
            let b = x
            return b
        scenario "s"
            thread left: left()
            thread right: right()
        exists left.a = 0 and right.b = 0
        """;

    [Fact]
    public void Take_BothReadBeforeWritesArrive_EndsWithTwoZeros()
    {
        var execution = new Execution(AlgorithmReader.Read("sb.dq", Buffering).OrThrow(), "s", MemoryModel.Tso);
        foreach (int thread in new[] { 0, 0, 1, 1 })
            Go(execution, thread, isMemory: false);
        Assert.Equal(["0", "0"], execution.Calls.Select(call => call.Result));
        Assert.Equal([0L, 0L], execution.Now.Places.Select(place => place.Value));
        Go(execution, 0, isMemory: true);
        Go(execution, 1, isMemory: true);
        Assert.Equal([1L, 1L], execution.Now.Places.Select(place => place.Value));
        Assert.Empty(execution.Choices);
        Assert.Equal(6, execution.Steps.Length);
        Assert.Throws<ArgumentOutOfRangeException>(() => execution.Take(0));
    }

    [Fact]
    public void Take_AlwaysTheLastChoice_EndsInAnOutcomeOfTheSearch()
    {
        for (ulong seed = 1; seed <= 30; seed++)
        {
            var algorithm = AlgorithmReader.Read("random", RandomAlgorithm.Of(seed)).OrThrow();
            foreach (MemoryModel model in Enum.GetValues<MemoryModel>())
            {
                var execution = new Execution(algorithm, "random", model);
                while (execution.Choices.Length > 0)
                    execution.Take(execution.Choices.Length - 1);
                var found = Checker.Check(algorithm, "random", new() { Memory = model });
                string[] results = [.. execution.Calls.Select(call => call.Result).Where(one => one.Length > 0)];
                bool isFound = found.Outcomes.Any(one => results.SequenceEqual(one.Results.Select(
                    text => text[(text.IndexOf('=', StringComparison.Ordinal) + 2)..])));
                Assert.True(
                    isFound || found.Verdict != Verdict.Holds,
                    $"seed {seed}, {model}: {string.Join("; ", results)}\n{RandomAlgorithm.Of(seed)}");
            }
        }
    }

    [Theory]
    [InlineData("broken/growable-no-owner-fence.dq", MemoryModel.Tso)]
    [InlineData("broken/thief-lock-no-second-look.dq", MemoryModel.Sc)]
    [InlineData("broken/tagged-top-no-tag.dq", MemoryModel.Sc)]
    [InlineData("broken/two-locks-wrong-order.dq", MemoryModel.Sc)]
    [InlineData("growable.dq", MemoryModel.Ra)]
    public void Broken_StepsOfAWitnessMadeByHand_FailsWithTheSameWords(string file, MemoryModel model)
    {
        var algorithm = AlgorithmReader.Read(file, ShippedFiles.Read(file)).OrThrow();
        var (scenario, found) = algorithm.Scenarios
            .Select(one => (one, Checker.Check(algorithm, one, new() { Memory = model, Reductions = Reductions.None })))
            .First(one => one.Item2.Verdict == Verdict.Broken);
        var execution = new Execution(algorithm, scenario, model);
        foreach (var step in found.Witness!.Steps)
        {
            Assert.Null(execution.Broken);
            Assert.Null(execution.Finding);
            Assert.True(TryMake(execution, step), CheckerWords.English.Sentence(step));
        }

        Assert.Equal(found.Property, execution.Broken);
        Assert.Equal(
            CheckerWords.English.Why(found.Witness.Finding!), CheckerWords.English.Why(execution.Finding!));
        var again = Execution.Replay(algorithm, scenario, model, execution.Taken);
        Assert.Equal(
            execution.Steps.Select(CheckerWords.English.Sentence), again.Steps.Select(CheckerWords.English.Sentence));
        Assert.Equal(found.Witness.Calls, again.Calls);
    }

    [Fact]
    public void IsAsked_BothReadsBeforeBothWritesArrive_IsSaid()
    {
        var execution = new Execution(AlgorithmReader.Read("sb.dq", Buffering).OrThrow(), "s", MemoryModel.Tso);
        foreach (int thread in new[] { 0, 0, 1, 1 })
            Go(execution, thread, isMemory: false);
        Assert.False(execution.IsAsked);
        Go(execution, 0, isMemory: true);
        Go(execution, 1, isMemory: true);
        Assert.True(execution.IsAsked);
        Assert.Null(execution.Broken);
    }

    // Of several ways of one access the one is taken that tells the same.
    private static bool TryMake(Execution execution, WitnessStep step)
    {
        for (int choice = 0; choice < execution.Choices.Length; choice++)
        {
            var preview = execution.Preview(choice);
            if (execution.Choices[choice].Thread != step.Thread || !preview.Deeds.SequenceEqual(step.Deeds))
                continue;
            execution.Take(choice);
            Assert.Equal(preview.Deeds, execution.Steps[^1].Deeds);
            return true;
        }

        return false;
    }

    private static void Go(Execution execution, int thread, bool isMemory) => execution.Take(
        execution.Choices.ToList().FindIndex(one => one.Thread == thread && one.IsMemory == isMemory));
}
