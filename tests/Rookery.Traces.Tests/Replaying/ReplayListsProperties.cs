using Rookery.Traces.Measuring;
using Rookery.Traces.Replaying;

namespace Rookery.Traces.Tests.Replaying;

/// <summary>Running counts, lives of tasks and jumps against naive ones, over random runs.</summary>
public sealed class ReplayListsProperties
{
    [Fact]
    public void CountsAt_TheEnd_AreTheMeasures() => SimulatedTraces.All.Sample(
        trace =>
        {
            RunCounts counts = new Replay(trace).CountsAt(trace.Count);
            Measures measures = Measures.Of(trace);
            Assert.Equal(measures.Work, counts.Work);
            Assert.Equal(measures.Steals, counts.Steals);
            Assert.Equal(measures.StolenTasks, counts.StolenTasks);
            Assert.Equal(measures.Probes, counts.Probes);
            Assert.Equal(measures.EmptyProbes, counts.EmptyProbes);
            Assert.Equal(measures.LostRaces, counts.LostRaces);
            Assert.Equal(measures.Sleeps, counts.Sleeps);
            Assert.Equal(measures.Wakes, counts.Wakes);
            Assert.Equal(measures.Forks, counts.Forks);
        },
        iter: 100);

    [Fact]
    public void CountsAt_AnyStep_AreThoseOfTheEventsBefore() => SimulatedTraces.All.Sample(
        trace =>
        {
            var replay = new Replay(trace);
            var (begun, ended, steals) = (0, 0, 0);
            for (int step = 0; step <= trace.Count; step++)
            {
                RunCounts counts = replay.CountsAt(step);
                Assert.Equal((begun, ended, steals), (counts.TasksBegun, counts.TasksEnded, counts.StolenTasks));
                if (step == trace.Count)
                    break;
                begun += trace[step].Kind == EventKind.Begin ? 1 : 0;
                ended += trace[step].Kind == EventKind.End ? 1 : 0;
                steals += trace[step].Kind == EventKind.Steal ? 1 : 0;
            }
        },
        iter: 30);

    [Fact]
    public void NextAndPrevious_OfAnyKind_AreThoseOfASearch() =>
        Gen.Select(SimulatedTraces.All, Gen.Enum<EventKind>(), Gen.Int[0, 9_999], Gen.Int[-1, 4]).Sample(
            (trace, kind, draw, worker) =>
            {
                var replay = new Replay(trace);
                int from = draw % (trace.Count + 1);
                int? asked = worker < 0 ? null : worker;
                var steps = Enumerable.Range(0, trace.Count)
                    .Where(step => trace[step].Kind == kind && (worker < 0 || trace[step].Worker == worker)).ToList();
                int next = steps.FindIndex(step => step >= from);
                int previous = steps.FindLastIndex(step => step < from);
                Assert.Equal(next < 0 ? -1 : steps[next], replay.NextOf(kind, from, asked));
                Assert.Equal(previous < 0 ? -1 : steps[previous], replay.PreviousOf(kind, from, asked));
                if (worker < 0)
                    Assert.Equal(Moments.Next(trace, from, kind), replay.NextOf(kind, from));
            },
            iter: 200);

    [Fact]
    public void HistoryOf_EveryTask_TellsWhatItsRecordAndTheStagesSay() => SimulatedTraces.All.Sample(
        trace =>
        {
            var replay = new Replay(trace);
            for (int task = 0; task < Math.Min(replay.Tasks.Count, 60); task++)
                AssertTrue(replay, task);
        },
        iter: 60);

    [Fact]
    public void HistoryOf_OddTraces_NeverThrows() => OddTraces.All.Sample(
        trace =>
        {
            Replay replay = new ReplayBuilder(trace).Build();
            for (int task = 0; task < Math.Min(replay.Tasks.Count, 60); task++)
                Assert.All(replay.HistoryOf(task), entry => Assert.InRange(entry.Step, 0, trace.Count - 1));
            Assert.True(replay.CountsAt(trace.Count).Work >= 0);
        },
        iter: 200);

    [Fact]
    public void HistoryOf_NoSuchTask_IsRefused() => Assert.Throws<ArgumentOutOfRangeException>(() =>
        new Replay(new TraceRecorder().Build(new(), TextLabels.None)).HistoryOf(0));

    private static void AssertTrue(Replay replay, int task)
    {
        var history = replay.HistoryOf(task);
        TaskRecord record = replay.Tasks[task];
        Assert.Equal(record.Steals, history.Count(entry => entry.Turn == TaskTurn.Stolen));
        Assert.Equal(
            record.BeginStep, history.Where(entry => entry.Turn == TaskTurn.Begun).Select(e => e.Step).Single(-1));
        Assert.Equal(
            record.EndStep, history.Where(entry => entry.Turn == TaskTurn.Ended).Select(e => e.Step).Single(-1));
        if (record.Parent >= 0)
        {
            Assert.Equal(record.IsCalled ? TaskTurn.Called : TaskTurn.Forked, history[0].Turn);
            Assert.Equal((record.OriginStep, record.Parent), (history[0].Step, history[0].Other));
        }

        Assert.Equal(history.Select(entry => entry.Step).Order(), history.Select(entry => entry.Step));
        foreach (HistoryEntry entry in history)
        {
            Assert.Equal(replay.Trace[entry.Step].Time, entry.Time);
            Stage after = replay.At(entry.Step + 1);
            bool isQueued = after.SharedQueue.Contains(task) || after.Workers[entry.Worker].Deque.Contains(task);
            Assert.Equal(entry.IsQueued, isQueued);
        }
    }
}

file static class Singles
{
    /// <summary>The only one, or what stands for none.</summary>
    public static int Single(this IEnumerable<int> values, int none) => values.DefaultIfEmpty(none).Single();
}
