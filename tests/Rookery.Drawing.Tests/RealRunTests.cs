using Rookery.Traces;
using Rookery.Traces.Replaying;

namespace Rookery.Drawing.Tests;

public sealed class RealRunTests
{
    public static TheoryData<string, string> Options => new()
    {
        { "queues", "per-worker" }, { "queues", "shared" }, { "queues", "none" }, { "amount", "half" },
        { "fork-runs", "child" }, { "at-join", "wait" }, { "at-join", "leapfrog" }, { "at-join", "suspend" },
        { "when-idle", "sleep" }, { "thief-takes", "newest" }, { "owner-takes", "oldest" }, { "victim", "lowest" },
    };

    [Theory]
    [MemberData(nameof(Options))]
    public void EachView_OfASimulatedRun_IsSound(string option, string word)
    {
        // Sharing one queue and a thread for each task go with joins that do not help.
        var trace = option == "queues" && word != "per-worker"
            ? RealRuns.Count(4, 3, (option, word), ("at-join", "wait"))
            : RealRuns.Count(4, 3, (option, word));
        var replay = new Replay(trace);
        SceneChecks.AssertSound(TimelineView.Draw(trace));
        SceneChecks.AssertSound(TaskTreeView.Draw(trace, replay.Tasks));
        SceneChecks.AssertSound(StolenWorkView.Draw(trace, replay.Tasks));
        SceneChecks.AssertSound(StealMatrixView.Draw(trace));
        for (var i = 0; i <= 60; i++)
            SceneChecks.AssertSound(DequeView.Draw(replay, trace.Count * i / 60, "What happened, and why it did."));
        var steals = Enumerable.Range(0, trace.Count).Where(step => trace[step].Kind == EventKind.Steal);
        foreach (var step in steals.Take(20))
            SceneChecks.AssertSound(DequeView.Draw(replay, step + 1, "A steal."));
    }
}
