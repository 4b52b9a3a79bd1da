using Rookery.Traces.Replaying;

namespace Rookery.Traces.Tests.Replaying;

public sealed class ReplayTests
{
    private static readonly Replay OneSteal = new(TraceText.Read(TraceText.OneSteal));

    [Fact]
    public void At_Start_NobodyHasAnything()
    {
        Stage stage = OneSteal.At(0);
        Assert.Equal(0, stage.Time);
        Assert.All(stage.Workers, w => Assert.Equal(
            (Stretch.Off, -1, 0, -1), (w.Stretch, w.CurrentTask, w.Deque.Count, w.LastStep)));
    }

    [Fact]
    public void At_AfterForkAndCall_CalleeIsOnTopOfItsCallerAndChildIsQueued()
    {
        WorkerStage worker = OneSteal.At(9).Workers[0];
        Assert.Equal([0, 2], worker.Stack);
        Assert.Equal([1], worker.Deque);
        Assert.Equal((Stretch.Working, 8), (worker.Stretch, worker.Line));
    }

    [Fact]
    public void At_AfterCalleeEnded_CallerGoesOnAtTheLineOfItsCall()
    {
        WorkerStage worker = OneSteal.At(15).Workers[0];
        Assert.Equal([0], worker.Stack);
        Assert.Equal(4, worker.Line);
    }

    [Fact]
    public void At_AfterSteal_TaskIsInTheThiefsHands()
    {
        Stage stage = OneSteal.At(12);
        Assert.Equal([1], stage.Workers[1].Stack);
        Assert.Empty(stage.Workers[0].Deque);
        Assert.False(stage.HasBegun(1));
        Assert.Equal((0, 0), (stage.Workers[1].FailedLooks, stage.Workers[1].LastSuccess));
    }

    [Fact]
    public void At_AfterTwoFailedLooks_CountsThem() => Assert.Equal(2, OneSteal.At(11).Workers[1].FailedLooks);

    [Theory]
    [InlineData(0, 40, 20)]
    [InlineData(6, 30, 20)]
    [InlineData(12, 28, 20)]
    [InlineData(15, 13, 13)]
    [InlineData(23, 0, 0)]
    public void RemainingWork_AtSteps_IsTotalLessWhatIsDone(int step, long root, long stolen) =>
        Assert.Equal((root, stolen), (OneSteal.At(step).RemainingWork(0), OneSteal.At(step).RemainingWork(1)));

    [Theory]
    [InlineData(-1)]
    [InlineData(24)]
    public void At_NoSuchStep_IsRefused(int step) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => OneSteal.At(step));

    [Fact]
    public void At_ChildFirst_ParentIsQueuedWithItsCallersAndComesBack()
    {
        var replay = new Replay(TraceText.Read(
            """
            0 0 begin 0
            0 0 call 0 1
            0 0 begin 1 0
            0 0 fork 1 2
            0 0 begin 2 1
            0 1 probe 1 0
            1 1 steal 1 0
            1 1 end 1 0
            """,
            ("fork-runs", "child")));
        Assert.Equal([0, 1], replay.At(3).Workers[0].Stack);
        Assert.Equal([2], replay.At(4).Workers[0].Stack);
        Assert.Equal([1], replay.At(4).Workers[0].Deque);
        Assert.Equal([0, 1], replay.At(7).Workers[1].Stack);
        Assert.Empty(replay.At(7).Workers[0].Deque);
        Assert.Equal([0], replay.At(8).Workers[1].Stack);
    }

    [Fact]
    public void At_StealOfHalf_FirstIsInHandAndOthersAreInTheThiefsDeque()
    {
        var replay = new Replay(TraceText.Read(
            """
            0 0 begin 0
            0 0 fork 0 1
            0 0 fork 0 2
            0 0 fork 0 3
            1 1 probe 1 0
            2 1 steal 1 0
            2 1 steal 2 0
            3 1 begin 1 0
            """,
            ("amount", "half")));
        WorkerStage thief = replay.At(7).Workers[1];
        Assert.Equal([1], thief.Stack);
        Assert.Equal([2], thief.Deque);
        Assert.Equal([3], replay.At(7).Workers[0].Deque);
    }

    [Fact]
    public void At_Suspend_WaitingTaskLeavesAndComesBackWhereTheLastChildEnded()
    {
        var replay = new Replay(TraceText.Read(
            """
            0 0 begin 0
            0 0 fork 0 1
            1 1 steal 1 0
            1 1 begin 1 0
            2 0 join-wait 0 1 9
            5 1 end 1 0
            5 1 join-pass 0 -1 9
            """,
            ("at-join", "suspend")));
        Assert.Empty(replay.At(5).Workers[0].Stack);
        Assert.Empty(replay.At(6).Workers[1].Stack);
        Assert.Equal([0], replay.At(7).Workers[1].Stack);
        Assert.Equal(9, replay.At(7).Workers[1].Line);
    }

    [Fact]
    public void At_SharedQueue_HoldsWhatNobodyTook()
    {
        var replay = new Replay(TraceText.Read(
            "0 0 begin 0\n0 0 fork 0 1\n0 0 fork 0 2\n1 1 take 2", ("queues", "shared")));
        Assert.Equal([1, 2], replay.At(3).SharedQueue);
        Assert.Equal([1], replay.At(4).SharedQueue);
        Assert.Equal([2], replay.At(4).Workers[1].Stack);
        Assert.Equal(2, replay.At(3).QueuedTasks);
    }

    [Fact]
    public void At_ManyEventsApart_EqualsOneStepAtATime()
    {
        var recorder = new TraceRecorder();
        recorder.Add(new TraceEvent(0, EventKind.Begin, 0, 0, -1, 1));
        for (int i = 1; i <= 3_000; i++)
            recorder.Add(new TraceEvent(i, EventKind.Fork, 0, 0, i, 2));
        for (int i = 1; i <= 1_000; i++)
            recorder.Add(new TraceEvent(3_000 + i, EventKind.Steal, 1 + (i % 2), i, 0, 0));
        Trace trace = recorder.Build(new TraceInputs { Workers = 3 }, TextLabels.None);

        var here = new Replay(trace);
        for (int step = 0; step < trace.Count; step += 7)
        {
            int queued = Math.Clamp(step - 1, 0, 3_000) - Math.Max(0, step - 3_001);
            Assert.Equal(queued, here.At(step).Workers[0].Deque.Count);
        }

        Assert.Equal(Enumerable.Range(501, 2_500), new Replay(trace).At(3_501).Workers[0].Deque);
    }

    [Fact]
    public void At_AnyStepOfALongTrace_PlaysABoundedNumberOfEvents()
    {
        var recorder = new TraceRecorder();
        for (int i = 0; i < 100_000; i++)
            recorder.Add(new TraceEvent(i, EventKind.Fork, 0, 0, i + 1, 0));
        var replay = new Replay(recorder.Build(new TraceInputs(), TextLabels.None));
        replay.At(1);

        // At most 256 events, each a worker record and a path of a tree of at most 17 levels: below 2 kB an event.
        long before = GC.GetAllocatedBytesForCurrentThread();
        Assert.Equal(99_999, replay.At(99_999).Workers[0].Deque.Count);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 1, 256 * 2_000);

        // One step further is one event.
        before = GC.GetAllocatedBytesForCurrentThread();
        replay.At(100_000);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 1, 5_000);
    }

    [Fact]
    public void From_LongTrace_UsesFewBytesATask()
    {
        var recorder = new TraceRecorder();
        for (int i = 0; i < 100_000; i++)
            recorder.Add(new TraceEvent(i, EventKind.Fork, 0, i / 2, i + 1, 0));
        Trace trace = recorder.Build(new TraceInputs(), TextLabels.None);
        long before = GC.GetAllocatedBytesForCurrentThread();
        TaskTable table = TaskTable.From(trace);
        long used = GC.GetAllocatedBytesForCurrentThread() - before;
        Assert.Equal(100_001, table.Count);
        Assert.InRange(used / table.Count, 50, 160);
    }

    [Fact]
    public void At_ImpossibleEvents_NeverThrows() => OddTraces.All.Sample(AssertCalm);

    [Theory]
    [InlineData(EventKind.Work, Stretch.Working)]
    [InlineData(EventKind.JoinWait, Stretch.Searching)]
    [InlineData(EventKind.Wake, Stretch.Searching)]
    [InlineData(EventKind.Steal, Stretch.Scheduling)]
    [InlineData(EventKind.Unblock, Stretch.Scheduling)]
    [InlineData(EventKind.Block, Stretch.Blocked)]
    [InlineData(EventKind.Sleep, Stretch.Asleep)]
    [InlineData(EventKind.Stop, Stretch.Off)]
    public void After_Kind_IsTheStretchOfTheTable(EventKind kind, Stretch stretch) =>
        Assert.Equal(stretch, Stretches.After(kind));

    private static void AssertCalm(Trace trace)
    {
        var replay = new Replay(trace);
        for (int step = 0; step <= trace.Count; step++)
        {
            Stage stage = replay.At(step);
            IEnumerable<int> held = stage.Workers.SelectMany(w => w.Stack.Concat(w.Deque));
            Assert.All(held, t => Assert.True(replay.Tasks.Knows(t)));
            for (int task = 0; task < replay.Tasks.Count; task++)
            {
                Assert.True(stage.RemainingWork(task) >= 0);
                Assert.True(stage.MovableWork(task) >= 0);
            }
        }
    }
}
