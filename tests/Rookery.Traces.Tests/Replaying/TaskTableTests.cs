using Rookery.Traces.Replaying;

namespace Rookery.Traces.Tests.Replaying;

public sealed class TaskTableTests
{
    private static readonly TaskTable Table = TaskTable.From(TraceText.Read(TraceText.OneSteal));

    [Fact]
    public void Record_OfTheRoot_HoldsWholeRun() =>
        Assert.Equal(new TaskRecord(-1, false, 0, 1, -1, 0, 20, 0, 0, 0, 10, 40), Table[0]);

    [Fact]
    public void Record_OfAStolenTask_TellsWhereItRan() =>
        Assert.Equal(new TaskRecord(0, false, 1, 3, 5, 12, 17, 1, 1, 1, 20, 20), Table[1]);

    [Fact]
    public void Record_OfACalledTask_TellsItsCaller() =>
        Assert.Equal(new TaskRecord(0, true, 1, 4, 6, 7, 14, 0, 0, 0, 10, 10), Table[2]);

    [Fact]
    public void Children_ByCreationAndByEnd_DifferInOrder()
    {
        Assert.Equal([1, 2], Table.ChildrenOf(0).ToArray());
        Assert.Equal([2, 1], Table.EndedChildrenOf(0).ToArray());
        Assert.Equal([0, 1, 2, 2, 1, 0], new[] { 5, 6, 7, 14, 15, 18 }.Select(s => Table.UnfinishedChildren(0, s)));
    }

    [Fact]
    public void CallChain_OfACallee_BeginsWithItsCaller()
    {
        Assert.Equal([0, 2], Table.CallChainOf(2));
        Assert.Equal([1], Table.CallChainOf(1));
    }

    [Fact]
    public void Work_OfTheRun_IsTheSumOfAllTasks() => Assert.Equal(40, Table.Work);

    [Fact]
    public void From_WorkCutOffByTheEnd_CountsUpToTheLastEvent()
    {
        TaskTable table = TaskTable.From(TraceText.Read("0 0 begin 0\n5 0 work 0\n9 1 probe -1 0"));
        Assert.Equal((4L, -1), (table[0].OwnWork, table[0].EndStep));
    }

    [Fact]
    public void From_CircleOfParents_KeepsTheFirstEdgesOnly()
    {
        TaskTable table = TaskTable.From(TraceText.Read("0 0 fork 0 1\n0 0 fork 1 2\n0 0 fork 2 0\n0 0 fork 2 2"));
        Assert.Equal((-1, 0, 1), (table[0].Parent, table[1].Parent, table[2].Parent));
        Assert.Equal((0, 1, 2), (table[0].Depth, table[1].Depth, table[2].Depth));
    }

    [Fact]
    public void From_StrayTaskNumber_DoesNotAskForMemory()
    {
        TaskTable table = TaskTable.From(TraceText.Read("0 0 begin 0\n1 0 work 2000000000\n2 0 end 0"));
        Assert.Equal(6, table.Count);
        Assert.False(table.Knows(2_000_000_000));
        Assert.Equal(2, table[0].EndStep);
    }

    [Fact]
    public void From_NoEvents_IsEmpty() =>
        Assert.Equal((0, 0L), (TaskTable.From(TraceText.Read("")).Count, TaskTable.From(TraceText.Read("")).Work));

    [Fact]
    public void Forest_WorkedExample_HasThePlacesOfItsDocumentation()
    {
        var forest = new TaskForest(4);
        Assert.NotEmpty(forest.Parts([-1, 0, 0, 1], [1, 3, 2], [3, 1, 2, 0]).ToList());
        Assert.Equal([0, 1, 3, 2], forest.Place);
        Assert.Equal([4, 2, 1, 1], forest.Size);
    }
}
