using Rookery.Lab.Predict;
using Rookery.Lab.Tests.Support;
using Rookery.Traces;

namespace Rookery.Lab.Tests.Predict;

public sealed class PointingTests
{
    // A run in which worker 0 has several queued tasks at the first steal.
    [Fact]
    public async Task Point_WorkersAndTasks_BecomesAnAnswer()
    {
        var run = await Made.RunAsync("seabird/count.fj", "victim=lowest");
        var drill = new Drill(run.Replay);
        var question = drill.Next(0, [EventKind.Steal])!;
        var stage = run.Replay.At(question.Step);
        var victim = stage.Workers[question.Event.Other];
        Assert.True(victim.Deque.Count > 1);

        var byTask = Pointing.Point(new(question.Event.Worker), $"task={victim.Deque[0]}", stage);
        Assert.Equal(question.Solution, byTask);

        var own = Pointing.Point(Answer.Nothing, $"task={victim.Deque[^1]}", stage);
        Assert.Equal(new(victim.Worker, EventKind.Take, null, QueueEnd.Newest, victim.Deque[^1]), own);

        var byWorkers = Pointing.Point(new(2, EventKind.Steal), "worker=0", stage);
        Assert.Equal(new(2, EventKind.Steal, 0), byWorkers);
        Assert.Equal(new(1), Pointing.Point(new(2), "worker=1", stage));
        Assert.Equal(new(2, EventKind.Steal, 0), Pointing.Point(
            new(2, EventKind.Steal), $"task={stage.Workers[0].CurrentTask}", stage));
    }

    [Theory]
    [InlineData("")]
    [InlineData("step=4")]
    [InlineData("worker=999")]
    [InlineData("worker=-1")]
    [InlineData("task=x")]
    public async Task Point_AnythingElse_ChangesNothing(string target)
    {
        var run = await Made.RunAsync("fibonacci.fj", "set.n=5");
        Assert.Equal(new(1), Pointing.Point(new(1), target, run.Replay.At(3)));
    }
}
