using System.Globalization;
using Rookery.Traces;
using Rookery.Traces.Replaying;

namespace Rookery.Drawing.Tests;

public sealed class TaskTreeViewTests
{
    public static TheoryData<string> Edges => [.. EdgeTraces.All().Select(edge => edge.Name)];

    [Theory]
    [MemberData(nameof(Edges))]
    public void Draw_EdgeTrace_IsSound(string name)
    {
        var trace = EdgeTraces.Named(name);
        var tasks = TaskTable.From(trace);
        SceneChecks.AssertSound(TaskTreeView.Draw(trace, tasks));
        SceneChecks.AssertSound(TaskTreeView.Draw(trace, tasks, new() { LevelsMax = 2, ShowLabels = false }));
        SceneChecks.AssertSound(TaskTreeView.Draw(
            trace, tasks, new() { Frame = new() { Width = 900, Height = 600, TextScale = 0.7 } }));
    }

    [Fact]
    public void Draw_MillionEventsOnManyWorkers_StaysUnderTheBudget()
    {
        var trace = HalvingRun.Of(1_024, 80_000, 3);
        SceneChecks.AssertSound(TaskTreeView.Draw(trace, TaskTable.From(trace)));
    }

    [Fact]
    public void Draw_WideAndDeepTrees_AreSound()
    {
        SceneChecks.AssertSound(Draw(Shapes.Wide(5_000)));
        SceneChecks.AssertSound(Draw(Shapes.Deep(5_000)));
    }

    [Fact]
    public void Draw_FourWorkers_MatchesSnapshot() =>
        Snapshot.Match(Draw(HalvingRun.Of(4, 24, 7)), "task-tree-four-workers");

    [Fact]
    public void Draw_SmallTree_ShowsEachTaskOnceWithItsWorker()
    {
        var trace = HalvingRun.Of(4, 24, 7);
        var tasks = TaskTable.From(trace);
        var groups = TaskTreeView.Draw(trace, tasks).Marks.OfType<Group>().ToDictionary(group => group.Id);
        for (var task = 0; task < tasks.Count; task++)
        {
            var node = groups[string.Create(CultureInfo.InvariantCulture, $"task-{task}")];
            var number = Assert.Single(node.Marks.OfType<Text>());
            Assert.Equal(tasks[task].BeginWorker.ToString(CultureInfo.InvariantCulture), number.Content);
        }
    }

    [Fact]
    public void Plan_LargeTree_DrawnAndHiddenTasksAreAll()
    {
        var trace = HalvingRun.Of(8, 3_000, 3);
        var tasks = TaskTable.From(trace);
        var plan = TreePlan.Of(tasks, TreeCounts.Of(tasks, 0), 0, 1_500, 9, 38, 20);
        Assert.Equal(tasks.Count, plan.Root.All().Sum(node => node.Hidden + (node.Task >= 0 ? 1 : 0)));
    }

    [Fact]
    public void Draw_NodesOfALevel_StandApart()
    {
        var scene = Draw(HalvingRun.Of(8, 3_000, 3));
        var nodes = scene.Marks.OfType<Group>().Where(group => group.Id.StartsWith("task-", StringComparison.Ordinal))
            .Select(group => group.Marks[0].Bounds).ToList();
        for (var i = 0; i < nodes.Count; i++)
        {
            for (var j = i + 1; j < nodes.Count; j++)
                Assert.False(nodes[i].Overlaps(nodes[j]));
        }
    }

    private static Scene Draw(Trace trace) => TaskTreeView.Draw(trace, TaskTable.From(trace));
}
