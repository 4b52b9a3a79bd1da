using Rookery.Traces;
using Rookery.Traces.Replaying;

namespace Rookery.Drawing.Tests;

public sealed class StolenWorkViewTests
{
    public static TheoryData<string> Edges => [.. EdgeTraces.All().Select(edge => edge.Name)];

    [Theory]
    [MemberData(nameof(Edges))]
    public void Draw_EdgeTrace_IsSound(string name)
    {
        var trace = EdgeTraces.Named(name);
        var tasks = TaskTable.From(trace);
        SceneChecks.AssertSound(StolenWorkView.Draw(trace, tasks));
        SceneChecks.AssertSound(StolenWorkView.Draw(trace, tasks, new() { IsLogarithmic = true }));
        var small = new Frame { Width = 900, Height = 600, TextScale = 0.7 };
        SceneChecks.AssertSound(StolenWorkView.Draw(trace, tasks, new() { IsLogarithmic = false, Frame = small }));
    }

    [Fact]
    public void Draw_MillionEventsOnManyWorkers_StaysUnderTheBudget()
    {
        var trace = HalvingRun.Of(1_024, 80_000, 3);
        SceneChecks.AssertSound(StolenWorkView.Draw(trace, TaskTable.From(trace)));
    }

    [Fact]
    public void Draw_FourWorkers_MatchesSnapshot()
    {
        var trace = HalvingRun.Of(4, 24, 7);
        Snapshot.Match(StolenWorkView.Draw(trace, TaskTable.From(trace)), "stolen-work-four-workers");
    }

    [Fact]
    public void QueuedWork_WholeTasks_IsTheirTotalWork()
    {
        var trace = HalvingRun.Of(4, 24, 7);
        var tasks = TaskTable.From(trace);
        var work = QueuedWork.Of(trace, tasks);
        var (queued, stolen) = (new List<long>(), new List<long>());
        for (var step = 0; step < trace.Count; step++)
        {
            if (trace[step].Kind == EventKind.Fork)
                queued.Add(tasks[trace[step].Other].TotalWork);
            if (trace[step].Kind == EventKind.Steal)
                stolen.Add(tasks[trace[step].Task].TotalWork);
        }

        Assert.Equal(queued, work.Queued);
        Assert.Equal(stolen, work.Stolen);
    }

    // A root works 3, forks a child of 10 that runs at once, and a thief takes the root's rest: 5. Nothing else is
    // queued.
    [Fact]
    public void QueuedWork_Continuation_IsWhatIsLeftOfTheParent()
    {
        var recorder = new TraceRecorder();
        TraceEvent[] events =
        [
            new(0, EventKind.Begin, 0, 0, -1, 1), new(0, EventKind.Work, 0, 0, -1, 2),
            new(3, EventKind.Fork, 0, 0, 1, 3), new(3, EventKind.Begin, 0, 1, 0, 9),
            new(3, EventKind.Work, 0, 1, -1, 9), new(4, EventKind.Probe, 1, 0, 0, 0),
            new(5, EventKind.Steal, 1, 0, 0, 0), new(5, EventKind.Work, 1, 0, -1, 4),
            new(10, EventKind.JoinWait, 1, 0, 1, 5), new(13, EventKind.End, 0, 1, 0, 9),
            new(13, EventKind.JoinPass, 0, 0, -1, 5), new(13, EventKind.End, 0, 0, -1, 5),
        ];
        foreach (var item in events)
            recorder.Add(item);
        var inputs = new TraceInputs { Workers = 2 };
        inputs = inputs with { Scheduler = inputs.Scheduler.Add("fork-runs", "child").Add("at-join", "suspend") };
        var trace = recorder.Build(inputs, TextLabels.None);
        var work = QueuedWork.Of(trace, TaskTable.From(trace));
        Assert.Equal([5], work.Queued);
        Assert.Equal([5], work.Stolen);
    }

    [Fact]
    public void Classes_OfAnyValues_HoldEachOnce() =>
        Gen.Long[0, long.MaxValue].List[1, 40].Sample(values =>
        {
            foreach (var isLogarithmic in new bool?[] { null, true, false })
            {
                var classes = WorkClasses.For(values, isLogarithmic);
                Assert.Equal(values.Count, classes.CountsOf(values).Sum());
                Assert.InRange(classes.Count, 1, 60);
            }
        });
}
