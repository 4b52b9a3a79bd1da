using Rookery.Traces;
using Rookery.Traces.Replaying;
using RunStage = Rookery.Traces.Replaying.Stage;

namespace Rookery.Lab.Predict;

/// <summary>Says which steps of thieves were decided by draws, from the trace alone.</summary>
internal sealed class Draws
{
    private readonly Replay _replay;
    private readonly string _victim;
    private readonly bool _leapfrogs;

    /// <summary>Reads the run's options.</summary>
    public Draws(Replay replay)
    {
        _replay = replay;
        TraceInputs inputs = replay.Trace.Inputs;
        _victim = inputs.Option("victim", "random");
        _leapfrogs = inputs.Option("at-join", "help") == "leapfrog";
        HasDeques = inputs.Option("queues", "per-worker") == "per-worker";
    }

    /// <summary>Whether workers have deques of their own.</summary>
    public bool HasDeques { get; }

    /// <summary>Whether a thief draws its victim at this stage, where it has more than one to draw from.</summary>
    /// <param name="stage">The stage before its look.</param>
    /// <param name="thief">The thief.</param>
    public bool IsDrawn(RunStage stage, int thief)
    {
        if (!HasDeques || stage.Workers.Length <= 2)
            return false;
        WorkerStage worker = stage.Workers[thief];
        if (_leapfrogs && worker.CurrentTask >= 0)
            return false;
        return _victim switch
        {
            "random" => true,
            "last-success" => worker.LastSuccess < 0,
            _ => false,
        };
    }

    /// <summary>The stage before the last look that a worker has made by now, if its draw decides now.</summary>
    /// <returns>That stage; null when the worker's last look was not drawn, or it is not looking.</returns>
    public RunStage? BeforeDrawnLook(RunStage stage, int worker)
    {
        WorkerStage thief = stage.Workers[worker];
        if (thief.Stretch != Stretch.Searching || thief.LastStep < 0)
            return null;
        RunStage before = thief.LastEvent == EventKind.Probe ? _replay.At(thief.LastStep) : stage;
        return IsDrawn(before, worker) ? before : null;
    }

    /// <summary>How many of the others have something to steal, and how many have nothing.</summary>
    public static (int Full, int Bare) OthersOf(RunStage stage, int thief)
    {
        int full = 0;
        foreach (WorkerStage worker in stage.Workers)
            full += worker.Worker != thief && !worker.Deque.IsEmpty ? 1 : 0;
        return (full, stage.Workers.Length - 1 - full);
    }
}
