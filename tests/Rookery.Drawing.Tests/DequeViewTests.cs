using Rookery.Traces;
using Rookery.Traces.Replaying;

namespace Rookery.Drawing.Tests;

public sealed class DequeViewTests
{
    private const string Sentence =
        "Worker 3 has nothing left. It draws worker 0 and takes task 3, the oldest task there: it has waited longest "
        + "and stands for a quarter of the work that the whole program still contains at this moment.";

    public static TheoryData<string> Edges => [.. EdgeTraces.All().Select(edge => edge.Name)];

    [Theory]
    [MemberData(nameof(Edges))]
    public void Draw_EdgeTrace_IsSoundAtManySteps(string name)
    {
        var trace = EdgeTraces.Named(name);
        var replay = new Replay(trace);
        var small = new DequeOptions { Frame = new() { Width = 900, Height = 600, TextScale = 0.7 } };
        for (var i = 0; i <= 24; i++)
        {
            var step = (int)(trace.Count * (long)i / 24);
            SceneChecks.AssertSound(DequeView.Draw(replay, step, Sentence));
            SceneChecks.AssertSound(DequeView.Draw(replay, step, Sentence, small));
        }
    }

    [Fact]
    public void Draw_EachStepOfASmallRun_IsSound()
    {
        var trace = HalvingRun.Of(4, 24, 7);
        var replay = new Replay(trace);
        for (var step = 0; step <= trace.Count; step++)
            SceneChecks.AssertSound(DequeView.Draw(replay, step, Sentence));
    }

    [Fact]
    public void Draw_OnAPhone_ShowsTheNextToBeStolenOfEveryDeque()
    {
        var trace = RealRuns.Count(4, 3);
        Assert.True(Audit.Of(trace).IsLawful);
        var replay = new Replay(trace);
        var phone = new DequeOptions
        {
            Frame = new() { Width = 390, Height = 490, TextScale = 0.6, ShowHeading = false },
        };
        for (var step = 0; step <= trace.Count; step++)
        {
            var scene = DequeView.Draw(replay, step, "", phone);
            SceneChecks.AssertSound(scene);
            var workers = replay.At(step).Workers;
            for (var worker = 0; worker < workers.Length; worker++)
            {
                if (workers[worker].Deque.IsEmpty)
                    continue;
                var row = scene.Marks.OfType<Group>().Single(group => group.Id == $"worker-{worker}");
                Assert.Contains(row.Shapes(), mark => mark is Box { Fill.Role: Role.Worker or Role.Waiting });
            }
        }
    }

    [Fact]
    public void Draw_AfterASteal_MatchesSnapshot()
    {
        var (trace, step) = SecondSteal();
        Snapshot.Match(DequeView.Draw(new Replay(trace), step, Sentence), "deques-after-a-steal");
    }

    [Fact]
    public void Draw_Squares_HaveAreasInProportionToTheWork()
    {
        var (trace, step) = SecondSteal();
        var replay = new Replay(trace);
        var squares = DequeView.Draw(replay, step).Marks.OfType<Group>().Single(group => group.Id == "worker-1")
            .Marks.OfType<Box>().Where(box => box.Fill.Role == Role.Worker).ToList();
        var deque = replay.At(step).Workers[1].Deque;
        Assert.Equal(deque.Count, squares.Count);
        Assert.True(deque.Count > 2);
        var scales = Enumerable.Range(0, deque.Count).Select(i =>
            AreaOf(squares[deque.Count - 1 - i]) / TaskTable.From(trace)[deque[i]].TotalWork).ToList();
        Assert.All(scales, scale => Assert.Equal(scales[0], scale, scales[0] * 1e-6));
    }

    [Fact]
    public void Draw_LongDeque_ShowsBothEndsAndCountsTheRest()
    {
        var trace = Shapes.Wide(100_000);
        var scene = DequeView.Draw(new Replay(trace), 100_001, Sentence);
        SceneChecks.AssertSound(scene);
        var texts = scene.Shapes().OfType<Text>().Select(text => text.Content).ToList();
        Assert.Contains("task 1", texts);
        Assert.Contains("task 100000", texts);
        Assert.Contains(texts, text => text.EndsWith(" more", StringComparison.Ordinal));
    }

    [Fact]
    public void Draw_ManyWorkers_ShowsThoseOfTheEventAndCountsTheRest()
    {
        var trace = HalvingRun.Of(1_024, 8_000, 3);
        var step = Enumerable.Range(0, trace.Count).Last(step => trace[step].Kind == EventKind.Steal) + 1;
        var scene = DequeView.Draw(new Replay(trace), step, Sentence);
        SceneChecks.AssertSound(scene);
        var ids = scene.Marks.OfType<Group>().Select(group => group.Id).ToList();
        Assert.Contains(FormattableString.Invariant($"worker-{trace[step - 1].Worker}"), ids);
        Assert.Contains(FormattableString.Invariant($"worker-{trace[step - 1].Other}"), ids);
        Assert.Contains(
            scene.Shapes().OfType<Text>(), text => text.Content.Contains("more workers", StringComparison.Ordinal));
    }

    [Fact]
    public void Draw_SharedQueue_HasOneLane()
    {
        var run = HalvingRun.Of(3, 40, 2);
        var recorder = new TraceRecorder();
        for (var step = 0; step < run.Count; step++)
            recorder.Add(run[step]);
        var inputs = run.Inputs with { Scheduler = run.Inputs.Scheduler.Add("queues", "shared") };
        var trace = recorder.Build(inputs, TextLabels.None);
        var scene = DequeView.Draw(new Replay(trace), 10, Sentence);
        SceneChecks.AssertSound(scene);
        Assert.Contains(scene.Marks.OfType<Group>(), group => group.Id == "shared-queue");
    }

    [Fact]
    public void Draw_StepBeyondTheEnd_IsRefused()
    {
        var trace = HalvingRun.Of(1, 2);
        Assert.Throws<ArgumentOutOfRangeException>(() => DequeView.Draw(new Replay(trace), trace.Count + 1));
    }

    private static double AreaOf(Box box) => box.Place.Width * box.Place.Height;

    private static (Trace Trace, int Step) SecondSteal()
    {
        var trace = HalvingRun.Of(4, 24, 7);
        var steals = Enumerable.Range(0, trace.Count).Where(step => trace[step].Kind == EventKind.Steal);
        return (trace, steals.ElementAt(1) + 1);
    }
}
