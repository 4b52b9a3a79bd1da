using Rookery.Checking;
using Rookery.Lab.Deques;
using Rookery.Lab.Documents;

namespace Rookery.Lab.Tests.Deques;

public sealed class WalkTests
{
    private const string Buffering = "deques/litmus/store-buffering.dq";

    [Fact]
    public void Calls_BeforeTheirSteps_HaveNotBegun()
    {
        var algorithm = Read(Buffering);
        var found = Checker.Check(algorithm, "litmus", new() { Memory = MemoryModel.Tso });
        var walk = new Walk(algorithm.Source.Text, MemoryModel.Tso, found.Witness!, 0);
        Assert.All(walk.Calls, call => Assert.Equal(-1, call.First));
        Assert.All(walk.Go(1).Calls.Where(call => call.First >= 0), call => Assert.Equal(0, call.First));
        Assert.Equal(found.Witness!.Calls, walk.Go(99).Calls);
        Assert.Equal(walk.Count, walk.Go(99).At);
        Assert.Equal(2, walk.SoFar.Threads.Length);
        Assert.Equal(2, walk.Go(2).SoFar.Steps.Length);
    }

    [Fact]
    public void ReadableBy_UnderViews_IsWhatTheThreadHasNotLeftBehind()
    {
        var hand = new HandWalk(Read(Buffering), "litmus", MemoryModel.Ra);
        hand.Take(ChoiceOf(hand, 0));
        int x = hand.Walk.Now.Places.Select(place => place.Name).ToList().IndexOf("x");
        Assert.Equal([1], hand.Walk.ReadableBy(0, x));
        Assert.Equal([0, 1], hand.Walk.ReadableBy(1, x));
        Assert.True(hand.Walk.IsChanged(x));
    }

    [Fact]
    public void Take_AsALitmusTestAsks_SaysSoAndUndoGoesBack()
    {
        var hand = new HandWalk(Read(Buffering), "litmus", MemoryModel.Tso);
        foreach (int thread in new[] { 0, 0, 1, 1 })
            hand.Take(ChoiceOf(hand, thread));
        Assert.False(hand.IsOver);
        while (!hand.IsOver)
            hand.Take(0);
        Assert.True(hand.IsAsked);
        int steps = hand.Walk.At;
        hand.Undo();
        Assert.Equal(steps - 1, hand.Walk.At);
        Assert.False(hand.IsAsked);
        hand.GoBackTo(0);
        Assert.False(hand.CanUndo);
        hand.Take(99);
        Assert.Equal(0, hand.Walk.At);
    }

    private static int ChoiceOf(HandWalk hand, int thread) => hand.Choices.ToList().FindIndex(
        one => one.Choice.Thread == thread && !one.Choice.IsMemory);

    private static Algorithm Read(string file) => AlgorithmReader.Read(file, DemoPrograms.TextOf(file)!).OrThrow();
}
