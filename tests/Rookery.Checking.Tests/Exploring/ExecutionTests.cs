using Rookery.Checking.Tests.Naive;

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

    private static void Go(Execution execution, int thread, bool isMemory) => execution.Take(
        execution.Choices.ToList().FindIndex(one => one.Thread == thread && one.IsMemory == isMemory));
}
