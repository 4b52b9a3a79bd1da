using Rookery.Checking.Tests.Shipped;
using Rookery.Checking.Words;

namespace Rookery.Checking.Tests.References;

/// <summary>
/// Progress of the operations of known deques: the standard reading of their papers (from memory; named in the files).
/// </summary>
public sealed class ProgressReferences
{
    /// <remarks>In this scenario nobody but the owner takes the lower of two locks, so its push never waits.</remarks>
    [Theory]
    [InlineData("tagged-top.dq", ProgressClass.WaitFree, ProgressClass.WaitFree, ProgressClass.WaitFree)]
    [InlineData("growable-weak.dq", ProgressClass.WaitFree, ProgressClass.WaitFree, ProgressClass.WaitFree)]
    [InlineData("growable-retry.dq", ProgressClass.WaitFree, ProgressClass.WaitFree, ProgressClass.LockFree)]
    [InlineData("thief-lock.dq", ProgressClass.WaitFree, ProgressClass.Blocking, ProgressClass.Blocking)]
    [InlineData("two-locks.dq", ProgressClass.WaitFree, ProgressClass.Blocking, ProgressClass.Blocking)]
    [InlineData("one-lock.dq", ProgressClass.Blocking, ProgressClass.Blocking, ProgressClass.Blocking)]
    [InlineData("idempotent.dq", ProgressClass.WaitFree, ProgressClass.WaitFree, ProgressClass.WaitFree)]
    public void Progress_KnownDeque_AsItsPaperSays(
        string file, ProgressClass push, ProgressClass pop, ProgressClass steal)
    {
        foreach (MemoryModel model in Enum.GetValues<MemoryModel>())
        {
            var found = ShippedResults.Of(file, "one owner, two thieves", model);
            Assert.Equal(
                [("push", push), ("pop", pop), ("steal", steal)],
                found.Progress.Select(one => (one.Operation, one.Class)));
        }
    }

    /// <summary>
    /// Two threads that wait for each other block; two that withdraw and try again can do so for ever, though each
    /// alone would get through (common practice).
    /// </summary>
    [Fact]
    public void Progress_WaitingAndGivingWay_AreBlockingAndObstructionFree()
    {
        const string Text = """
            shared left
            shared right
            shared turn
            operation enter_left()
                left = 1
                while right
                    left = 0
                    left = 1
            operation enter_right()
                right = 1
                while left
                    right = 0
                    right = 1
            operation try_left()
                let mine = 0
                while mine != 1
                    turn = 1
                    let mine = turn
            operation try_right()
                let mine = 0
                while mine != 2
                    turn = 2
                    let mine = turn
            scenario "waiting"
                thread a: enter_left()
                thread b: enter_right()
            scenario "giving way"
                thread a: try_left()
                thread b: try_right()
            """;
        var algorithm = AlgorithmReader.Read("polite.dq", Text).OrThrow();
        Assert.All(
            Checker.Check(algorithm, "waiting", new()).Progress,
            one => Assert.Equal(ProgressClass.Blocking, one.Class));
        Assert.All(
            Checker.Check(algorithm, "giving way", new()).Progress,
            one => Assert.Equal(ProgressClass.ObstructionFree, one.Class));
    }

    /// <summary>A loop that copies ends by itself; one that waits for another thread does not.</summary>
    [Fact]
    public void Progress_LoopsOfTheirOwn_AreWaitFree()
    {
        const string Text = """
            shared x
            shared flag
            operation count()
                let i = 0
                while i < 3
                    x = i
                    let i = i + 1
            operation await()
                while flag == 0
                    let r = x
            operation raise()
                flag = 1
            scenario "s"
                thread a: count()
                thread b: await()
                thread c: raise()
            """;
        var found = Checker.Check(AlgorithmReader.Read("loops.dq", Text).OrThrow(), "s", new());
        Assert.Equal(
            [ProgressClass.WaitFree, ProgressClass.Blocking, ProgressClass.WaitFree],
            found.Progress.Select(one => one.Class));
        Assert.Contains("line", CheckerWords.English.Why(found.Progress[1].Reason), StringComparison.Ordinal);
    }
}
