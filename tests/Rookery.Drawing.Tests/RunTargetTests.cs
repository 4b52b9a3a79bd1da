using Rookery.Checking;

namespace Rookery.Drawing.Tests;

public sealed class RunTargetTests
{
    [Fact]
    public void SpeedUp_RunsWithTargets_AreGroupsThatLeadThere()
    {
        var data = new SpeedUpData
        {
            Program = "a.fj",
            WorkTicks = 100,
            SpanTicks = 10,
            Series = [new("s", [new(1, 100, "cell=0"), new(2, 60, "cell=1"), new(2, 60)])],
        };
        Assert.Equal(["cell=0", "cell=1"], TargetsOf(SpeedUpView.Draw(data)));
    }

    [Fact]
    public void Comparison_RunsWithTargets_StayWithTheirValuesWhenThinned()
    {
        var values = Enumerable.Range(0, 5_000).Select(i => (double)((i * 37) % 5_000)).ToArray();
        var group = new ComparisonGroup(0, 0, [.. values], 2_500, 2_400, 2_600)
        {
            Targets = [.. values.Select(value => FormattableString.Invariant($"cell={value}"))],
        };
        var scene = ComparisonView.Draw(new()
        {
            Title = "t",
            Subtitle = "s",
            Measure = "m",
            Columns = ["c"],
            Series = [""],
            Groups = [group],
        });
        string[] targets = [.. TargetsOf(scene)];
        Assert.Equal(2_000, targets.Length);
        Assert.Equal(2_000, targets.Distinct().Count());
        var points = GroupsOf(scene).Where(one => one.Target.Length > 0).ToArray();
        var byHeight = points.OrderByDescending(one => one.Bounds.MiddleY).Select(one => int.Parse(
            one.Target["cell=".Length..], System.Globalization.CultureInfo.InvariantCulture)).ToArray();
        Assert.Equal(byHeight.Order(), byHeight);
    }

    [Fact]
    public void Witness_WithACurrentStep_FramesItsRowAndLeadsToEachRow()
    {
        var algorithm = AlgorithmReader.Read("sb.dq", """
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
            """).OrThrow();
        var witness = Checker.Check(algorithm, "s", new() { Memory = MemoryModel.Tso }).Witness!;
        Assert.Empty(TargetsOf(WitnessView.Draw(witness)));
        var scene = WitnessView.Draw(witness, new() { Current = 1, HasTargets = true });
        Assert.Equal(
            Enumerable.Range(0, witness.Steps.Length).Select(step => FormattableString.Invariant($"row={step}")),
            TargetsOf(scene));
        var framed = GroupsOf(scene).Where(one => one.Target.Length > 0
            && one.Marks.OfType<Box>().Any(box => box.Edge.Role == Role.Emphasis));
        Assert.Equal("row=1", Assert.Single(framed).Target);
    }

    private static IEnumerable<string> TargetsOf(Scene scene) =>
        GroupsOf(scene).Select(one => one.Target).Where(target => target.Length > 0);

    private static IEnumerable<Group> GroupsOf(Scene scene) => scene.Marks.SelectMany(Within);

    private static IEnumerable<Group> Within(Mark mark) =>
        mark is Group group ? group.Marks.SelectMany(Within).Prepend(group) : [];
}
