using Rookery.Traces.Replaying;

namespace Rookery.Traces.Tests.Replaying;

public sealed class ReplayBuilderTests
{
    [Fact]
    public void Build_InAnyPortions_GivesTheStagesOfOneGo() =>
        Gen.Select(SimulatedTraces.All, Gen.Int[1, 5_000]).Sample(
            (trace, portion) =>
            {
                var whole = new Replay(trace);
                var builder = new ReplayBuilder(trace);
                double progress = 0;
                while (!builder.Advance(portion))
                {
                    Assert.InRange(builder.Progress, progress, 0.99);
                    progress = builder.Progress;
                }

                Assert.Equal(1, builder.Progress);
                Replay replay = builder.Build();
                Assert.Same(replay, builder.Build());
                Assert.Equal(whole.LargestQueuedWork, replay.LargestQueuedWork);
                for (int step = 0; step <= trace.Count; step += 37)
                    AssertSame(whole.At(step), replay.At(step), replay.Tasks);
            },
            iter: 60);

    // What is asked for before the lists are made is the same, and so is what comes after.
    [Fact]
    public void Usable_BeforeTheListsAreMade_AnswersAsTheWholeDoes() => SimulatedTraces.All.Sample(
        trace =>
        {
            var whole = new Replay(trace);
            var builder = new ReplayBuilder(trace);
            while (builder.Usable is null)
                builder.Advance(500);
            Replay usable = builder.Usable;
            Assert.Equal(whole.CountsAt(trace.Count), usable.CountsAt(trace.Count));
            Assert.Equal(whole.LargestQueuedWork, usable.LargestQueuedWork);
            AssertSame(whole.At(trace.Count / 2), usable.At(trace.Count / 2), usable.Tasks);
            for (int asked = 0; asked < 2; asked++)
            {
                Assert.Equal(whole.HistoryOf(0), usable.HistoryOf(0));
                Assert.Equal(whole.NextOf(EventKind.Work, 3), usable.NextOf(EventKind.Work, 3));
                Assert.Same(usable, builder.Build());
            }
        },
        iter: 40);

    [Fact]
    public void Build_OddTraces_NeverThrows() => OddTraces.All.Sample(
        trace =>
        {
            Replay replay = new ReplayBuilder(trace).Build();
            Assert.True(replay.LargestQueuedWork >= 0);
            Assert.Equal(trace.Count, replay.At(trace.Count).Step);
        },
        iter: 200);

    [Fact]
    public void LargestQueuedWork_IsTheLargestOfAllForks() => SimulatedTraces.All.Sample(
        trace =>
        {
            var replay = new Replay(trace);
            long largest = QueuedWork.Of(trace, replay.Tasks).Queued.DefaultIfEmpty(0).Max();
            Assert.Equal(largest, replay.LargestQueuedWork);
        },
        iter: 60);

    [Fact]
    public void Advance_OfALongTrace_DoesAboutWhatItWasAskedFor()
    {
        Trace trace = Forks(50_000);
        var builder = new ReplayBuilder(trace);
        int portions = 1;
        while (!builder.Advance(5_000))
            portions++;

        // Events are gone through at least four times: tasks, stages, stretches, queued work.
        Assert.InRange(portions, 4 * trace.Count / 10_000, 20 * trace.Count / 5_000);
    }

    [Fact]
    public void Advance_OfNothing_IsRefused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new ReplayBuilder(Forks(1)).Advance(0));

    private static void AssertSame(Stage first, Stage second, TaskTable tasks)
    {
        Assert.Equal(first.Time, second.Time);
        Assert.Equal(first.SharedQueue, second.SharedQueue);
        foreach ((WorkerStage a, WorkerStage b) in first.Workers.Zip(second.Workers))
        {
            Assert.Equal(a.Stack, b.Stack);
            Assert.Equal(a.Deque, b.Deque);
            Assert.Equal((a.LastEvent, a.LastStep, a.Since, a.FailedLooks, a.LastSuccess),
                (b.LastEvent, b.LastStep, b.Since, b.FailedLooks, b.LastSuccess));
        }

        if (tasks.Count > 0)
            Assert.Equal(first.RemainingWork(0), second.RemainingWork(0));
    }

    private static Trace Forks(int count)
    {
        var recorder = new TraceRecorder();
        recorder.Add(new(0, EventKind.Begin, 0, 0, -1, 0));
        for (int i = 1; i <= count; i++)
            recorder.Add(new(i, EventKind.Fork, 0, 0, i, 1));
        return recorder.Build(new(), TextLabels.None);
    }
}
