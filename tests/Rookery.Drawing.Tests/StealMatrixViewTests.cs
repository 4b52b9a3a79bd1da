namespace Rookery.Drawing.Tests;

public sealed class StealMatrixViewTests
{
    public static TheoryData<string> Edges => [.. EdgeTraces.All().Select(edge => edge.Name)];

    [Theory]
    [MemberData(nameof(Edges))]
    public void Draw_EdgeTrace_IsSound(string name)
    {
        var trace = EdgeTraces.Named(name);
        SceneChecks.AssertSound(StealMatrixView.Draw(trace));
        SceneChecks.AssertSound(StealMatrixView.Draw(trace, new() { RowsMax = 2 }));
        SceneChecks.AssertSound(StealMatrixView.Draw(
            trace, new() { Frame = new() { Width = 900, Height = 600, TextScale = 0.7 } }));
    }

    [Fact]
    public void Draw_MillionEventsOnManyWorkers_StaysUnderTheBudget() =>
        SceneChecks.AssertSound(StealMatrixView.Draw(HalvingRun.Of(1_024, 80_000, 3)));

    [Fact]
    public void Draw_FourWorkers_MatchesSnapshot() =>
        Snapshot.Match(StealMatrixView.Draw(HalvingRun.Of(4, 24, 7)), "steal-matrix-four-workers");

    [Fact]
    public void Counts_OfATrace_AreThoseOfItsEvents()
    {
        var trace = HalvingRun.Of(8, 400, 3);
        var counts = StealCounts.Of(trace, 32);
        var expected = new long[8, 8];
        for (var step = 0; step < trace.Count; step++)
        {
            if (trace[step].Kind == Traces.EventKind.Steal)
                expected[trace[step].Worker, trace[step].Other]++;
        }

        Assert.Equal(expected, counts.Counts);
        Assert.Equal(expected.Cast<long>().Sum(), counts.Total);
        Assert.Equal(Enumerable.Range(0, 8).Sum(counts.ThiefTotal), counts.Total);
        Assert.Equal(Enumerable.Range(0, 8).Sum(counts.VictimTotal), counts.Total);
    }

    [Fact]
    public void Counts_SeveralTasksAtOnce_AreOneSteal()
    {
        var recorder = new Traces.TraceRecorder();
        foreach (var task in new[] { 1, 2, 3 })
            recorder.Add(new(5, Traces.EventKind.Steal, 1, task, 0, 0));
        recorder.Add(new(6, Traces.EventKind.Steal, 1, 4, 0, 0));
        var counts = StealCounts.Of(recorder.Build(new() { Workers = 2 }, Traces.TextLabels.None), 32);
        Assert.Equal(2, counts.Total);
    }
}
