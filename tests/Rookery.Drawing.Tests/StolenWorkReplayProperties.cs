using Rookery.Traces;
using Rookery.Traces.Replaying;

namespace Rookery.Drawing.Tests;

public sealed class StolenWorkReplayProperties
{
    // The histogram's single pass and the replay's index are two ways to the same number.
    [Theory]
    [InlineData("parent")]
    [InlineData("child")]
    public void QueuedWork_AtEachSteal_IsTheReplaysMovableWork(string forkRuns)
    {
        foreach (var seed in Enumerable.Range(1, 6))
        {
            var trace = RealRuns.Count(4, seed, ("fork-runs", forkRuns));
            var replay = new Replay(trace);
            var expected = Enumerable.Range(0, trace.Count).Where(step => trace[step].Kind == EventKind.Steal)
                .Select(step => replay.At(step).MovableWork(trace[step].Task));
            Assert.Equal(expected, QueuedWork.Of(trace, replay.Tasks).Stolen);
        }
    }
}
