using System.Collections.Immutable;
using Rookery.Traces;

namespace Rookery.Simulation.Engine;

// Workers with nothing to do: failed looks, watching the shared queue, sleeping, waking, starving.
internal sealed partial class RunEngine<TSink>
{
    /// <summary>A pause doubles up to 2^10 looks: longer ones would only add idle time.</summary>
    private const int PauseDoublingsMax = 10;

    private readonly WorkerLine _watchers = new();
    private readonly WorkerLine _sleepers = new();

    private void FailedLook(int worker, WorkerState state, long cost)
    {
        state.Failed++;
        _victims.Failed(state);
        if (HasStarved())
            return;
        switch (_scheduler.WhenIdle)
        {
            case WhenIdle.Spin:
            case WhenIdle.Sleep:
                SetTime(worker, state, WorkerPhase.Seek, Later(cost));
                break;
            case WhenIdle.BackOff:
                long pause = _machine.Probe << Math.Min(state.Failed - 1, PauseDoublingsMax);
                SetTime(worker, state, WorkerPhase.Seek, Later(cost + pause));
                break;
        }
    }

    // Workers that spin would spin for ever where nobody can go on; asking everybody at every look would be too dear.
    private bool HasStarved()
    {
        if (++_futileLooks <= 1000L * _workers.Count)
            return false;
        _futileLooks = 0;
        if (CanSomebodyGoOn())
            return false;
        Starve();
        return true;
    }

    private void FallAsleep(int worker, WorkerState state)
    {
        Emit(EventKind.Sleep, worker, -1, -1, 0);
        _sleepers.Add(worker);
        state.AsleepFrom = Later(_machine.Sleep);
        SetNever(worker, state, WorkerPhase.Asleep);
        ReleaseCore(state);
    }

    // The looks of a watching worker are not events: only the first, and the one at which it finds something.
    private void StartWatching(int worker, WorkerState state)
    {
        Emit(EventKind.Empty, worker, -1, -1, 0);
        state.WatchFrom = _now;
        _watchers.Add(worker);
        if (_scheduler.WhenIdle == WhenIdle.Sleep)
            SetTime(worker, state, WorkerPhase.Watch, Later(_machine.Probe * _patience));
        else if (!_sharesCores)
            SetNever(worker, state, WorkerPhase.Watch);
        else if (!HasStarved())
            SetTime(worker, state, WorkerPhase.Watch, Math.Max(Later(_machine.Probe), state.SliceEnd));
    }

    private void FinishWatch(int worker, WorkerState state)
    {
        _watchers.Remove(worker);
        if (_scheduler.WhenIdle == WhenIdle.Sleep)
            FallAsleep(worker, state);
        else
            Seek(worker, state);
    }

    private void StopWatching(int worker, WorkerState state)
    {
        _watchers.Remove(worker);
        state.Phase = WorkerPhase.Seek;
        if (!_sharesCores || state.HasCore)
            SetTime(worker, state, WorkerPhase.Seek, NextLook(state));
    }

    // A look at this very time sees what happens at this time, whatever the order of the workers.
    private long NextLook(WorkerState state)
    {
        long step = _machine.Probe;
        long look = state.WatchFrom;
        if (_scheduler.WhenIdle == WhenIdle.BackOff)
        {
            for (int i = 0; i < PauseDoublingsMax && look < _now; i++, step *= 2)
                look += step;
        }

        long missing = Math.Max(0, _now - look);
        return look + ((missing + step - 1) / step * step);
    }

    // Something has been queued. Returns what telling others costs the one who queued it.
    private long TellOthers(int worker)
    {
        if (_scheduler.Queues == Queues.Shared && _watchers.Count > 0)
        {
            int watcher = _watchers.First;
            StopWatching(watcher, _workers[watcher]);
            if (_scheduler.Wake == WakePolicy.One || _scheduler.WhenIdle != WhenIdle.Sleep)
                return 0;
        }

        if (_sleepers.Count == 0)
            return 0;
        int count = _scheduler.Wake == WakePolicy.One ? 1 : _sleepers.Count;
        for (int i = 1; i <= count; i++)
            Signal(worker, _sleepers.First, i);
        return _machine.Signal * count;
    }

    // The waker signals one after another: the nth sleeper is signalled after n signals.
    private void Signal(int worker, int sleeper, int place)
    {
        WorkerState state = _workers[sleeper];
        if (state.Phase == WorkerPhase.Asleep)
            _sleepers.Remove(sleeper);
        state.WokenBy = worker;
        long signalled = Math.Max(Later(_machine.Signal * place), state.AsleepFrom);
        SetTime(sleeper, state, WorkerPhase.Waking, Math.Min(ClockMax, signalled + _machine.Wake));
    }

    private void FinishWaking(int worker, WorkerState state)
    {
        Emit(EventKind.Wake, worker, -1, state.WokenBy, 0);
        state.Failed = 0;
        SetTime(worker, state, WorkerPhase.Seek, _now);
    }

    // Somebody has a task in hand, is about to have one, may pass a join, or could find a task by looking on.
    private bool CanSomebodyGoOn()
    {
        bool isAnyQueued = _sharedQueue.Count > 0 || _workers.Exists(w => w.Deque.Count > 0);
        for (int i = 0; i < _workers.Count; i++)
        {
            WorkerState state = _workers[i];
            if (state.Current >= 0 || IsReady(state) || state.Phase is WorkerPhase.Start or WorkerPhase.Waking)
                return true;
            bool isLooking = state.Phase is not (WorkerPhase.Asleep or WorkerPhase.Waiting or WorkerPhase.Alone
                or WorkerPhase.Gone);
            if (isLooking && isAnyQueued && CanFind(i, state))
                return true;
        }

        return false;
    }

    private bool CanFind(int worker, WorkerState state)
    {
        if (!Leapfrogs(state) || MayTakeOwn(state))
            return true;
        int holder = AwaitedHolder(worker, state);
        return holder >= 0 && _workers[holder].Deque.Count > 0;
    }

    // Nobody can go on: an answer, not an error.
    private void Starve()
    {
        var waits = ImmutableArray.CreateBuilder<StarvedWait>();
        for (int i = 0; i < _workers.Count; i++)
        {
            if (_workers[i].Waiting.Count == 0)
                continue;
            ref TaskState task = ref _tasks[_workers[i].Waiting.Peek()];
            ref TaskState child = ref _tasks[task.NewestChild];
            bool isQueued = !child.IsWaiting && _workers[child.Holder].Current != task.NewestChild;
            bool isShared = isQueued && _scheduler.Queues == Queues.Shared;
            waits.Add(new(i, task.Id, task.JoinLine, child.Id, isQueued, isShared ? -1 : child.Holder));
        }

        Starvation = new Starvation(_now, waits.ToImmutable());
        Finish();
    }
}
