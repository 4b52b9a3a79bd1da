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

    [Theory]
    [MemberData(nameof(Models))]
    public void DrawStep_EveryMoment_IsSoundInBothWidths(MemoryModel model)
    {
        var witness = WitnessOf(Race, model);
        string[] code = Race.ReplaceLineEndings("\n").Split('\n');
        for (int steps = 0; steps <= witness.Steps.Length; steps++)
        {
            foreach (double width in new[] { 1200.0, 600 })
            {
                double height = Math.Ceiling(WitnessStepView.HeightFor(witness, width, 0.85));
                var frame = new Frame { Width = width, Height = height, TextScale = 0.85, ShowHeading = false };
                SceneChecks.AssertSound(
                    WitnessStepView.Draw(witness, steps, new() { Frame = frame, Code = [.. code] }));
            }
        }
    }

    [Fact]
    public void DrawStep_WithStoreBuffers_ShowsLinesBuffersAndMemory()
    {
        var witness = WitnessOf(Race, MemoryModel.Tso);
        string[] code = Race.ReplaceLineEndings("\n").Split('\n');
        string[] pictures =
        [
            .. Enumerable.Range(0, witness.Steps.Length + 1).Select(steps =>
                SvgWriter.Write(WitnessStepView.Draw(witness, steps, new() { Code = [.. code] }))),
        ];
        Assert.Contains("next take_bottom()", pictures[0], StringComparison.Ordinal);
        Assert.Contains("bottom = 0", pictures[0], StringComparison.Ordinal);
        Assert.Contains("let t = top", pictures[0], StringComparison.Ordinal);

        // The shortest execution needs one of the two only: its item was never put in.
        string waits = witness.Steps[0].Thread == 0 ? "waits: bottom = 0" : "waits: top = 1";
        Assert.Contains(waits, pictures[1], StringComparison.Ordinal);
        Assert.Contains("has ended", pictures[^1], StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => WitnessStepView.Draw(witness, pictures.Length));
    }

    [Theory]
    [MemberData(nameof(Models))]
    public void Draw_InGerman_IsSoundAndSpeaksNoEnglish(MemoryModel model)
    {
        var witness = WitnessOf(Race, model);
        var frame = new Frame { Width = 900, Height = 700, TextScale = 0.8, Words = DrawingWords.German };
        Scene[] scenes =
        [
            WitnessView.Draw(witness, new() { Frame = frame, HasTargets = true }),
            .. Enumerable.Range(0, witness.Steps.Length + 1).Select(
                steps => WitnessStepView.Draw(witness, steps, new() { Frame = frame })),
        ];
        foreach (var scene in scenes)
        {
            SceneChecks.AssertSound(scene);
            Assert.Equal("Eine Ausführung", scene.Title);
            foreach (var text in (string[])[scene.Description, .. scene.Shapes().OfType<Text>().Select(t => t.Content)])
            {
                Assert.DoesNotMatch(
                    @"(?<![\w-])(the|of|and|from|reads|writes|begins|returns|buffer|memory|next|ended|waits)(?![\w-])",
                    text);
            }
        }
    }

    [Fact]
    public void Draw_OneThreadThatDoesMore_HasTheWiderLane()
    {
        var witness = WitnessOf(
            """
            shared counter
            operation count_for_long(limit)
                let r = 0
                while r < 9
                    let r = add(counter, 1)
                assert r < 9
            operation look()
                let r = counter
            scenario "two"
                thread busy: count_for_long(1)
                thread idle: look()
            """, MemoryModel.Sc);
        var scene = WitnessView.Draw(witness, new() { Frame = new() { Width = 520, Height = 500, TextScale = 0.8 } });
        SceneChecks.AssertSound(scene);
        double[] panels =
        [
            .. scene.Shapes().OfType<Box>().Where(box => box.Fill == Role.Panel).Select(box => box.Place.Width),
        ];
        Assert.Equal(2, panels.Length);
        Assert.True(panels[0] > panels[1] * 1.15, $"{panels[0]} and {panels[1]}");
        Assert.True(panels[1] > panels[0] / 4);
    }

    private static Witness WitnessOf(string text, MemoryModel model)
    {
        var algorithm = AlgorithmReader.Read("witness.dq", text).OrThrow();
        return Checker.Check(algorithm, algorithm.Scenarios[0], new() { Memory = model }).Witness!;
    }
}
