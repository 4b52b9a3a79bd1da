using Rookery.Pool.Workers;

namespace Rookery.Pool;

/// <content>Who sleeps, who is woken, and who has starved. All lists are guarded by one lock, off the fork
/// path.</content>
public sealed partial class WorkerPool
{
    private readonly Lock _restGate = new();
    private readonly List<Sleeper> _sleepers = [];
    private int _blocked;
    private int _stopRequests;

    /// <summary>Whether some queue seems to hold a task.</summary>
    internal bool HasWork()
    {
        if (SharedQueue is not null)
            return SharedQueue.Count > 0;
        foreach (WorkerCore worker in Workers)
        {
            if (worker.Queue.Count > 0)
                return true;
        }

        return false;
    }

    internal void AddStopRequest(int count)
    {
        lock (_restGate)
        {
            _stopRequests += count;
            WriteAttentionNeedsLock();
        }

        if (count > 0)
            WakeAll();
    }

    internal void AddSleeper(WorkerCore worker, bool isFree)
    {
        lock (_restGate)
        {
            _sleepers.Add(new(worker, isFree ? SleepKind.Free : SleepKind.AtJoin));
            WriteAttentionNeedsLock();
        }
    }

    /// <summary>Adds a worker that blocks at a join; when that leaves none awake, the pool has starved.</summary>
    internal void AddBlocked(WorkerCore worker)
    {
        bool hasStarved;
        lock (_restGate)
        {
            _sleepers.Add(new(worker, SleepKind.Blocked));
            _blocked++;
            hasStarved = _blocked == Workers.Length && _sleepers.TrueForAll(s =>
                s.Worker.SleepsFor is { IsFinished: false });
        }

        if (hasStarved)
        {
            foreach (WorkerCore stuck in Workers)
                stuck.CurrentRun?.Stop(StopReason.Starved);
        }
    }

    /// <summary>
    /// Takes a worker off the list by its own wish; false when somebody else did, whose signal is on its way.
    /// </summary>
    internal bool TryRemoveSleeper(WorkerCore worker)
    {
        lock (_restGate)
            return RemoveNeedsLock(_sleepers.FindIndex(s => s.Worker == worker)) is not null;
    }

    /// <summary>Wakes one particular worker, if it sleeps.</summary>
    internal void Wake(WorkerCore worker, WorkerCore? by)
    {
        lock (_restGate)
            WakeNeedsLock(_sleepers.FindIndex(s => s.Worker == worker), by);
    }

    /// <summary>A task was queued: wakes the worker that has slept longest, or all.</summary>
    internal void WakeForWork(WorkerCore by)
    {
        lock (_restGate)
        {
            do
                WakeNeedsLock(_sleepers.FindIndex(s => s.Kind != SleepKind.Blocked), by);
            while (Options.Wake == WakePolicy.All && _sleepers.Exists(s => s.Kind != SleepKind.Blocked));
        }
    }

    private void WakeForRun()
    {
        lock (_restGate)
            WakeNeedsLock(_sleepers.FindIndex(s => s.Kind == SleepKind.Free), null);
    }

    private void WakeAll()
    {
        lock (_restGate)
        {
            while (_sleepers.Count > 0)
                WakeNeedsLock(0, null);
        }
    }

    private void WakeNeedsLock(int index, WorkerCore? by)
    {
        if (RemoveNeedsLock(index) is not { } worker)
            return;
        worker.WokenBy = by?.Number ?? -1;
        worker.Signal();
    }

    private WorkerCore? RemoveNeedsLock(int index)
    {
        if (index < 0)
            return null;
        Sleeper sleeper = _sleepers[index];
        _sleepers.RemoveAt(index);
        if (sleeper.Kind == SleepKind.Blocked)
            _blocked--;
        WriteAttentionNeedsLock();
        return sleeper.Worker;
    }

    // Blocked workers cannot be woken by a task, so they do not count.
    private void WriteAttentionNeedsLock()
    {
        int attention = (_stopRequests * WorkerCore.StopRequest) + _sleepers.Count - _blocked;
        foreach (WorkerCore worker in Workers)
        {
            // order: release. pairs with: the acquire in Worker.Fork; the barrier that a sleeper runs afterwards does
            // the rest.
            Volatile.Write(ref worker.Attention, attention);
        }
    }
}
