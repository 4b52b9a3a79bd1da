using Rookery.Checking;
using Rookery.Checking.Witnesses;

namespace Rookery.Drawing.Tests;

public sealed class WitnessViewTests
{
    private const string Race = """
        shared top = 0
        shared bottom = 1
        shared item[2] = 7
        operation take_bottom()
            bottom = 0
            let t = top
            if t == 0
                let x = item[0]
                return x
            return empty
        operation take_top()
            top = 1
            let b = bottom
            if b == 1
                let x = item[0]
                return x
            return empty
        scenario "race"
            thread owner: take_bottom()
            thread thief: take_top()
        expect none twice
        """;

    public static TheoryData<MemoryModel> Models => [.. Enum.GetValues<MemoryModel>()];

    [Theory]
    [MemberData(nameof(Models))]
    public void Draw_Witness_IsSound(MemoryModel model)
    {
        var witness = WitnessOf(Race, model);
        SceneChecks.AssertSound(WitnessView.Draw(witness));
        SceneChecks.AssertSound(WitnessView.Draw(
            witness, new() { Frame = new() { Width = 900, Height = 600, TextScale = 0.7 } }));
    }

    [Fact]
    public void Draw_StoreBuffers_MatchesSnapshot() => Snapshot.Match(
        WitnessView.Draw(WitnessOf(Race, MemoryModel.Tso), new() { Title = "Both take the last item" }),
        "witness-store-buffers");

    [Fact]
    public void Draw_LongExecution_ShowsItsEnd()
    {
        var scene = WitnessView.Draw(WitnessOf(
            """
            shared x
            operation count()
                let r = 0
                while r < 120
                    let r = add(x, 1)
                assert r < 120
            scenario "long"
                thread counter: count()
            """, MemoryModel.Sc));
        SceneChecks.AssertSound(scene);
        Assert.Contains("counter", scene.Description, StringComparison.Ordinal);
    }

    [Fact]
    public void Draw_FailureBeforeTheFirstStep_SaysSo()
    {
        var witness = WitnessOf(
            "shared x\noperation run()\n    assert 0\nscenario \"s\"\n    thread a: run()\n", MemoryModel.Sc);
        Assert.Empty(witness.Steps);
        SceneChecks.AssertSound(WitnessView.Draw(witness));
    }

    private static Witness WitnessOf(string text, MemoryModel model)
    {
        var algorithm = AlgorithmReader.Read("witness.dq", text).OrThrow();
        return Checker.Check(algorithm, algorithm.Scenarios[0], new() { Memory = model }).Witness!;
    }
}
