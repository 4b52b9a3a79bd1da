using Rookery.Traces.Replaying;

namespace Rookery.Traces.Tests.Replaying;

/// <summary>The replay against one that plays everything from the start with plain lists.</summary>
public sealed class ReplayModels
{
    private static readonly Gen<(Trace Trace, int[] Steps)> TracesWithSteps =
        from trace in SimulatedTraces.All
        from steps in Gen.Int[0, trace.Count].Array[4]
        select (trace, steps);

    [Fact]
    public void At_RandomStepsOfSimulatedRuns_EqualsNaiveReplay() =>
        TracesWithSteps.Sample(
            given =>
            {
                var replay = new Replay(given.Trace);
                var whole = new NaiveReplay(given.Trace, replay.Tasks.WorkerCount, given.Trace.Count);
                foreach (int step in given.Steps)
                {
                    Stage stage = replay.At(step);
                    AssertSameWork(replay.Tasks, stage, AssertSame(given.Trace, stage), whole);
                }
            },
            iter: 300,
            print: Print);

    [Fact]
    public void At_OneStepAfterTheOther_EqualsNaiveReplay() =>
        SimulatedTraces.All.Sample(
            trace =>
            {
                var replay = new Replay(trace);
                for (int step = 0; step <= Math.Min(trace.Count, 80); step++)
                    AssertSame(trace, replay.At(step));
            },
            iter: 50,
            print: t => Print((t, [])));

    private static NaiveReplay AssertSame(Trace trace, Stage stage)
    {
        var naive = new NaiveReplay(trace, stage.Workers.Length, stage.Step);
        Assert.Equal(naive.Time, stage.Time);
        Assert.Equal(naive.Shared, stage.SharedQueue);
        for (int worker = 0; worker < stage.Workers.Length; worker++)
        {
            WorkerStage here = stage.Workers[worker];
            Assert.Equal(naive.Stacks[worker], here.Stack);
            Assert.Equal(naive.Deques[worker], here.Deque);
            Assert.Equal(naive.LastOf(worker), (here.LastEvent, here.Since));
            Assert.Equal(naive.Stacks[worker].Count == 0 ? -1 : naive.Stacks[worker][^1], here.CurrentTask);
        }

        return naive;
    }

    private static void AssertSameWork(TaskTable tasks, Stage stage, NaiveReplay now, NaiveReplay whole)
    {
        long[] nowUnder = now.DoneUnderEach(tasks.Count);
        long[] wholeUnder = whole.DoneUnderEach(tasks.Count);
        for (int task = 0; task < tasks.Count; task++)
        {
            Assert.Equal(whole.DoneBy(task), tasks[task].OwnWork);
            Assert.Equal(wholeUnder[task], tasks[task].TotalWork);
            Assert.Equal(wholeUnder[task] - nowUnder[task], stage.RemainingWork(task));
            long movable = 0;
            foreach (int member in stage.HasBegun(task) ? tasks.CallChainOf(task) : [task])
            {
                movable += whole.DoneBy(member) - now.DoneBy(member);
                foreach (int child in tasks.ChildrenOf(member))
                    movable += now.HasCreated(child) ? 0 : wholeUnder[child];
            }

            Assert.Equal(movable, stage.MovableWork(task));
        }
    }

    private static string Print((Trace Trace, int[] Steps) given) =>
        $"{string.Join(' ', given.Trace.Inputs.Scheduler.Select(p => $"{p.Key}={p.Value}"))} "
        + $"workers={given.Trace.Inputs.Workers} steps={string.Join(',', given.Steps)}\n{given.Trace.Inputs.Source}";
}
