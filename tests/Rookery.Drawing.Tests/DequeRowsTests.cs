using Rookery.Traces;
using Rookery.Traces.Replaying;

namespace Rookery.Drawing.Tests;

public sealed class DequeRowsTests
{
    public static TheoryData<string> Edges => [.. EdgeTraces.All().Select(edge => edge.Name)];

    [Theory]
    [MemberData(nameof(Edges))]
    public void Draw_WithRowsKept_WritesTheSame(string name) => AssertSame(EdgeTraces.Named(name));

    [Theory]
    [InlineData(1)]
    [InlineData(4)]
    [InlineData(16)]
    public void Draw_ARealRunWithRowsKept_WritesTheSame(int workers) => AssertSame(RealRuns.Count(workers, 3));

    [Fact]
    public void Draw_TheNextMoment_TakesTheRowsThatDidNotChange()
    {
        var trace = RealRuns.Count(8, 3);
        var replay = new Replay(trace);
        var rows = new DequeRows();
        var options = new DequeOptions { ScaleWork = replay.LargestQueuedWork, HasTargets = true };
        var (same, all) = (0, 0);
        HashSet<Mark> last = new(ReferenceEqualityComparer.Instance);
        for (var step = 0; step <= trace.Count; step++)
        {
            var marks = DequeView.Draw(replay, step, "", options, rows).Marks.OfType<Group>()
                .Where(group => group.Id.StartsWith("worker-", StringComparison.Ordinal)).ToList();
            same += marks.Count(last.Contains);
            all += marks.Count;
            last = new(marks, ReferenceEqualityComparer.Instance);
        }

        Assert.True(same > all / 2, $"{same} of {all}");
    }

    // On and on, then back and forth; as a lab does, in two sizes and two styles.
    private static void AssertSame(Trace trace)
    {
        var replay = new Replay(trace);
        var (rows, pieces) = (new DequeRows(), new SvgPieces());
        var options = new DequeOptions { HasTargets = true, ScaleWork = replay.LargestQueuedWork };
        var most = Math.Min(trace.Count, 300);
        for (var step = 0; step <= most; step++)
            Compare(step, options, new() { IdPrefix = "s-" });
        for (var i = 0; i < 40; i++)
            Compare((int)(i * 7919L % (trace.Count + 1)), options, new() { IdPrefix = "s-" });
        Compare(most, options with { ScaleWork = null }, new());
        Compare(most, options with { Frame = new() { Width = 700, TextScale = 0.7 } }, new() { Style = Style.Dark });
        Compare(most, options with { Frame = new() { Words = DrawingWords.German } }, new());

        void Compare(int step, DequeOptions asked, SvgOptions written) => Assert.Equal(
            SvgWriter.Write(DequeView.Draw(replay, step, "", asked), written),
            SvgWriter.Write(DequeView.Draw(replay, step, "", asked, rows), written, pieces));
    }
}
