using System.Globalization;
using System.Xml.Linq;
using Rookery.Traces;
using Rookery.Traces.Replaying;

namespace Rookery.Drawing.Tests;

public sealed class TargetTests
{
    public static TheoryData<string> Edges => [.. EdgeTraces.All().Select(edge => edge.Name)];

    [Theory]
    [MemberData(nameof(Edges))]
    public void Figures_WithTargets_AreSoundAndShowTheSameShapes(string name)
    {
        var trace = EdgeTraces.Named(name);
        var replay = new Replay(trace);
        for (var i = 0; i <= 12; i++)
        {
            var step = (int)(trace.Count * (long)i / 12);
            AssertSameShapes(
                DequeView.Draw(replay, step), DequeView.Draw(replay, step, "", new() { HasTargets = true }));
        }

        AssertSameShapes(TimelineView.Draw(trace), TimelineView.Draw(trace, new() { HasTargets = true }));
    }

    [Fact]
    public void Deques_WithTargets_NameEachQueuedCurrentAndMovedTask()
    {
        var trace = RealRuns.Count(4, 3);
        var replay = new Replay(trace);
        var moved = 0;
        for (var step = 1; step <= trace.Count; step++)
        {
            var stage = replay.At(step);
            var groups = GroupsOf(DequeView.Draw(replay, step, "", new() { HasTargets = true }));
            foreach (var worker in stage.Workers)
            {
                foreach (var task in worker.Deque)
                    Assert.Equal(Target("task", task), groups[Target("queued-", task)].Target);
                if (worker.CurrentTask >= 0)
                    Assert.Equal(
                        Target("task", worker.CurrentTask), groups[Target("current-", worker.Worker)].Target);
                Assert.Equal(Target("worker", worker.Worker), groups[Target("worker-", worker.Worker)].Target);
            }

            if (trace[step - 1].Kind != EventKind.Steal || !groups.TryGetValue("move", out var move))
                continue;
            moved++;
            Assert.Equal(Target("task", trace[step - 1].Task), move.Target);
            Assert.Equal(Target("task", trace[step - 1].Task), groups[Target("gone-", trace[step - 1].Task)].Target);
        }

        Assert.True(moved > 3);
    }

    [Fact]
    public void Timeline_WithTargets_NamesTheStepOfEachBarAndSteal()
    {
        var trace = RealRuns.Count(3, 5);
        var groups = GroupsOf(TimelineView.Draw(trace, new() { HasTargets = true }));
        var bars = groups.Values.Where(group => group.Id.StartsWith("bar-", StringComparison.Ordinal)).ToList();
        Assert.True(bars.Count > 10);
        foreach (var bar in bars)
        {
            var box = bar.Marks.OfType<Box>().Single();
            var step = int.Parse(bar.Target["step=".Length..], CultureInfo.InvariantCulture);
            var isComputing = Stretches.After(trace[step].Kind) == Stretch.Working;
            Assert.Equal(isComputing, box.Fill.Role == Role.Worker);
        }

        var links = groups.Values.Where(group => group.Id.StartsWith("steal-", StringComparison.Ordinal)).ToList();
        Assert.True(links.Count > 1);
        Assert.All(links, link => Assert.Equal(EventKind.Steal, trace[StepOf(link)].Kind));
        Assert.All(Enumerable.Range(0, 3), row =>
            Assert.Equal(Target("worker", row), groups[Target("row-", row)].Target));
    }

    [Fact]
    public void TaskTree_NamesTheTaskOfEachNode()
    {
        var trace = RealRuns.Count(3, 5);
        var tasks = TaskTable.From(trace);
        var groups = GroupsOf(TaskTreeView.Draw(trace, tasks)).Values
            .Where(group => group.Id.StartsWith("task-", StringComparison.Ordinal)).ToList();
        Assert.True(groups.Count > 5);
        Assert.All(groups, group => Assert.Equal(group.Id, group.Target.Replace('=', '-')));
    }

    [Fact]
    public void Links_OfGroupsWithinGroups_AreNotNested()
    {
        var replay = new Replay(RealRuns.Count(4, 3));
        var scene = DequeView.Draw(replay, 40, "", new() { HasTargets = true });
        var svg = XDocument.Parse(SvgWriter.Write(scene, new() { LinkBase = "lab.html#" }));
        var links = svg.Descendants().Where(element => element.Name.LocalName == "a").ToList();
        Assert.NotEmpty(links);
        Assert.All(links, link => Assert.DoesNotContain(link.Ancestors(), above => above.Name.LocalName == "a"));
        Assert.Contains(links[0].Descendants().Attributes("data-target"), _ => true);
    }

    private static int StepOf(Group group) =>
        int.Parse(group.Target["step=".Length..], CultureInfo.InvariantCulture);

    private static string Target(string name, int number) => name.EndsWith('-')
        ? FormattableString.Invariant($"{name}{number}")
        : FormattableString.Invariant($"{name}={number}");

    private static void AssertSameShapes(Scene plain, Scene targeted)
    {
        SceneChecks.AssertSound(targeted);
        Assert.Equal(plain.Shapes().Count(), targeted.Shapes().Count());
        Assert.True(plain.Shapes().Zip(targeted.Shapes()).All(pair => pair.First.Bounds == pair.Second.Bounds));
    }

    private static Dictionary<string, Group> GroupsOf(Scene scene)
    {
        var groups = new Dictionary<string, Group>(StringComparer.Ordinal);
        var open = new Stack<Mark>(scene.Marks);
        while (open.TryPop(out var mark))
        {
            if (mark is not Group group)
                continue;
            groups.Add(group.Id, group);
            foreach (var inner in group.Marks)
                open.Push(inner);
        }

        return groups;
    }
}
