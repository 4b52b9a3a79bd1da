using Rookery.Checking.Words;

namespace Rookery.Checking.Tests.Properties;

public sealed class CheckerTests
{
    private const string Scenario = "scenario \"s\"\n    thread a: run()\n    thread b: run()\n";

    /// <summary>The example of docs/checker.md, listed there state by state.</summary>
    [Fact]
    public void Check_ExampleOfTheDocs_HasTheStatesListedThere()
    {
        const string Text = """
            shared x = 0
            operation set()
                x = 1
            operation look()
                let a = x
                return a
            observe x
            scenario "s"
                thread writer: set()
                thread reader: look()
            """;
        var algorithm = AlgorithmReader.Read("example.dq", Text).OrThrow();
        var plain = Checker.Check(algorithm, "s", new() { Reductions = Reductions.None });
        Assert.Equal((5, 4, 2), (plain.States, plain.Transitions, plain.Outcomes.Length));
        var buffered = Checker.Check(algorithm, "s", new() { Reductions = Reductions.None, Memory = MemoryModel.Tso });
        Assert.Equal((7, 7, 2), (buffered.States, buffered.Transitions, buffered.Outcomes.Length));
    }

    [Theory]
    [InlineData("shared g\noperation run()\n    lock g\n", Property.NoDeadlock, 1)]
    [InlineData("shared x\noperation run()\n    let r = add(x, 1)\n    assert r == 0\n", Property.Assertions, 2)]
    [InlineData("shared a[2]\nshared x\noperation run()\n    let r = add(x, 2)\n    a[r] = 1\n", Property.Bounds, 3)]
    [InlineData("shared x\noperation run()\n    let r = x\n    x = 1 / r\n", Property.Computation, 2)]
    [InlineData("shared x = 1\noperation run()\n    while 1\n        x = x0\n", Property.Computation, 0)]
    [InlineData("shared g\noperation run()\n    unlock g\n", Property.Locking, 1)]
    [InlineData("shared x\noperation run()\n    let r = x\n    x = 1 << r - 1\n", Property.Computation, 2)]
    public void Check_BrokenPromise_GivesAShortestExecution(string text, Property property, int steps)
    {
        text = text.Replace("x = x0", "let r = 1", StringComparison.Ordinal);
        var algorithm = AlgorithmReader.Read("broken.dq", text + Scenario).OrThrow();
        foreach (Reductions reductions in new[] { Reductions.All, Reductions.None })
        {
            var found = Checker.Check(algorithm, "s", new() { Reductions = reductions });
            Assert.Equal((Verdict.Broken, property), (found.Verdict, found.Property));
            Assert.Equal(steps, found.Witness!.Steps.Length);
            Assert.NotEmpty(CheckerWords.English.Why(found.Witness.Finding!));
        }
    }

    [Fact]
    public void Check_Deadlock_SaysWhoWaitsWhere()
    {
        var algorithm = AlgorithmReader.Read("lock.dq", "shared g\noperation run()\n    lock g\n" + Scenario).OrThrow();
        Assert.Equal(
            "Nobody can go on: b waits in line 3.",
            CheckerWords.English.Why(Checker.Check(algorithm, "s", new()).Witness!.Finding!));
    }

    [Fact]
    public void Check_LostItem_SaysWhichAndWhatWasLeft()
    {
        const string Text = """
            shared slot
            operation put(x)
                slot = x
            operation take()
                let x = swap(slot, 0)
                if x == 0
                    return empty
                return x
            drain take()
            expect once
            scenario "s"
                thread a: put(1), put(2)
            """;
        var found = Checker.Check(AlgorithmReader.Read("slot.dq", Text).OrThrow(), "s", new());
        Assert.Equal(Property.NothingLost, found.Property);
        string why = CheckerWords.English.Why(found.Witness!.Finding!);
        Assert.StartsWith("1 was put in", why, StringComparison.Ordinal);
        Assert.Contains("found 2", why, StringComparison.Ordinal);
    }

    [Fact]
    public void Check_TooManyStates_IsOutOfBudgetWithTheNumbers()
    {
        string text = "shared x\noperation run()\n    let r = 0\n    while r < 100\n"
            + "        let r = add(x, 1)\n" + Scenario;
        var found = Checker.Check(
            AlgorithmReader.Read("large.dq", text).OrThrow(), "s",
            new() { StatesMax = 50, Reductions = Reductions.None });
        Assert.Equal((Verdict.OutOfBudget, Budget.States), (found.Verdict, found.Exhausted));
        Assert.True(found.States > 50 && found.Frontier > 0);
    }

    [Fact]
    public void Check_LoopThatWrites_RunsOutOfBufferUnlessBounded()
    {
        string text = "shared x\nshared y\noperation run()\n    while 1\n        x = 1\n" + Scenario;
        var algorithm = AlgorithmReader.Read("flood.dq", text).OrThrow();
        var options = new CheckOptions { Memory = MemoryModel.Tso, ClassifiesProgress = false, StatesMax = 100_000 };
        Assert.Equal(Budget.Writes, Checker.Check(algorithm, "s", options).Exhausted);
        Assert.Equal(Verdict.Holds, Checker.Check(algorithm, "s", options with { BufferMax = 2 }).Verdict);
    }

    [Fact]
    public void Check_AskedToStop_IsOutOfBudget()
    {
        string text = "shared x\noperation run()\n    let r = add(x, 1)\n    let s = x\n" + Scenario;
        var found = Checker.Check(
            AlgorithmReader.Read("stop.dq", text).OrThrow(), "s", new() { Progress = _ => false });
        Assert.Equal(Budget.Time, found.Exhausted);
    }

    /// <summary>Values far from those that random walks meet: the states begin anew with wider numbers.</summary>
    [Fact]
    public void Check_ValuesOfAllSizes_AreKeptWhole()
    {
        const string Text = """
            shared x
            shared y
            operation run()
                let r = add(x, 1)
                if r == 1
                    y = 2147483647
                    y = -2147483647
            observe x, y
            scenario "s"
                thread a: run()
                thread b: run()
            """;
        foreach (MemoryModel model in Enum.GetValues<MemoryModel>())
        {
            var found = Checker.Check(AlgorithmReader.Read("wide.dq", Text).OrThrow(), "s", new() { Memory = model });
            Assert.Contains(found.Outcomes, one => one.Text == "x = 2, y = -2147483647");
        }
    }
}
