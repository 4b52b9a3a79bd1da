using Rookery.Traces;

namespace Rookery.Simulation.Engine;

// Looking for something to do: a join that may pass, an own task, another's task.
internal sealed partial class RunEngine<TSink>
{
    private void Seek(int worker, WorkerState state)
    {
        if (IsReady(state))
        {
            _futileLooks = 0;
            Pass(worker, state, state.Waiting.Pop());
            return;
        }

        if (_scheduler.Queues == Queues.Shared)
        {
            SeekShared(worker, state);
            return;
        }

        if (MayTakeOwn(state))
            TakeOwn(worker, state);
        else
            LookAtVictim(worker, state);
    }

    // It can only wait for others, and leaves its core to them where cores are few.
    private void StandAlone(int worker, WorkerState state)
    {
        SetNever(worker, state, WorkerPhase.Alone);
        if (!_sharesCores)
            return;
        Emit(EventKind.Stop, worker, -1, -1, 0);
        ReleaseCore(state);
    }

    // A leapfrogging worker that waits runs only children of the waiting task from its own deque.
    private bool MayTakeOwn(WorkerState state)
    {
        if (state.Deque.Count == 0)
            return false;
        if (!Leapfrogs(state))
            return true;
        int item = state.Deque.Newest;
        while (_tasks[item].IsCalled)
            item = _tasks[item].Parent;
        return _tasks[item].Parent == state.Waiting.Peek();
    }

    // A task moves with its callers; only leapfrogging asks where a caller is.
    private void SetHolder(int task, int worker)
    {
        _tasks[task].Holder = worker;
        if (_scheduler.AtJoin != AtJoin.Leapfrog)
            return;
        while (_tasks[task].IsCalled)
        {
            task = _tasks[task].Parent;
            _tasks[task].Holder = worker;
        }
    }

    private int OwnersChoice(TaskDeque deque) =>
        _scheduler.OwnerTakes == OwnerTakes.Newest ? deque.Newest : deque.Oldest;

    private int ThiefsChoice(TaskDeque deque) =>
        _scheduler.ThiefTakes == ThiefTakes.Oldest ? deque.Oldest : deque.Newest;

    // Where owner and thieves want the same task they race: the owner's take then has effect only at its end, and
    // follows the thieves' takes of that end. Otherwise the owner has its end to itself.
    private void TakeOwn(int worker, WorkerState state)
    {
        int item = OwnersChoice(state.Deque);
        bool isContested = _workers.Count > 1 && item == ThiefsChoice(state.Deque);
        long from = isContested ? Math.Max(Later(_machine.Take), state.EndBusyUntil) : _now;
        if (from > _now)
        {
            state.Seen = _tasks[item].Id;
            SetTime(worker, state, WorkerPhase.Contest, from);
            return;
        }

        Take(worker, state, _machine.Take);
    }

    private void FinishContest(int worker, WorkerState state)
    {
        if (state.Deque.Count > 0 && _tasks[OwnersChoice(state.Deque)].Id == state.Seen)
        {
            Take(worker, state, 0);
            return;
        }

        Emit(EventKind.LostRace, worker, state.Seen, worker, 0);
        SetTime(worker, state, WorkerPhase.Seek, Later(_machine.LostRace));
    }

    private void Take(int worker, WorkerState state, long cost)
    {
        state.Item = _scheduler.OwnerTakes == OwnerTakes.Newest ? state.Deque.TakeNewest() : state.Deque.TakeOldest();
        StartAfter(worker, state, EventKind.Take, -1, cost);
    }

    // Emits the take or steal of the item in hand; it starts when the cost is paid.
    private void StartAfter(int worker, WorkerState state, EventKind kind, int other, long cost)
    {
        _futileLooks = 0;
        state.Failed = 0;
        SetHolder(state.Item, worker);
        Emit(kind, worker, _tasks[state.Item].Id, other, 0);
        if (cost > 0)
            SetTime(worker, state, WorkerPhase.Start, Later(cost));
        else
            StartItem(worker, state);
    }

    private void LookAtVictim(int worker, WorkerState state)
    {
        if (_workers.Count == 1)
        {
            StandAlone(worker, state);
            return;
        }

        if (_scheduler.WhenIdle == WhenIdle.Sleep && state.Failed >= _patience)
        {
            FallAsleep(worker, state);
            return;
        }

        int victim = Leapfrogs(state) ? AwaitedHolder(worker, state) : _victims.Choose(worker, _workers);
        if (victim < 0)
        {
            // What it awaits lies beneath on its own stack: nothing that it may steal could help.
            StandAlone(worker, state);
            return;
        }

        TaskDeque deque = _workers[victim].Deque;
        state.Victim = victim;
        state.Seen = deque.Count == 0 ? -1 : _tasks[ThiefsChoice(deque)].Id;
        Emit(EventKind.Probe, worker, state.Seen, victim, 0);
        SetTime(worker, state, WorkerPhase.Look, Later(_machine.Probe));
    }

    private bool Leapfrogs(WorkerState state) => _scheduler.AtJoin == AtJoin.Leapfrog && state.Waiting.Count > 0;

    // Leapfrogging: the other worker that has a child which the waiting task awaits; -1 if this one has all of them.
    private int AwaitedHolder(int worker, WorkerState state)
    {
        for (int child = _tasks[state.Waiting.Peek()].NewestChild; child >= 0; child = _tasks[child].OlderSibling)
        {
            if (_tasks[child].Holder != worker)
                return _tasks[child].Holder;
        }

        return -1;
    }

    private void FinishLook(int worker, WorkerState state)
    {
        if (state.Seen < 0)
        {
            Emit(EventKind.Empty, worker, -1, state.Victim, 0);
            FailedLook(worker, state, 0);
            return;
        }

        WorkerState victim = _workers[state.Victim];
        bool isThere = victim.Deque.Count > 0 && _tasks[ThiefsChoice(victim.Deque)].Id == state.Seen;
        if (!isThere)
        {
            Emit(EventKind.LostRace, worker, state.Seen, state.Victim, 0);
            FailedLook(worker, state, _machine.LostRace);
        }
        else if (victim.EndBusyUntil > _now)
        {
            // Another thief still moves what it took from this end: takes of one end follow one another.
            SetTime(worker, state, WorkerPhase.Look, victim.EndBusyUntil);
        }
        else
        {
            Steal(worker, state, victim);
        }
    }

    private void Steal(int worker, WorkerState state, WorkerState victim)
    {
        int amount = _scheduler.Amount == StealAmount.One ? 1 : (victim.Deque.Count + 1) / 2;
        victim.EndBusyUntil = Later(_machine.Steal);
        _victims.Succeeded(state);
        state.Item = TakeAsThief(victim.Deque);
        int first = state.Item;
        if (amount > 1)
        {
            Emit(EventKind.Steal, worker, _tasks[first].Id, state.Victim, 0);
            for (int i = 1; i < amount; i++)
            {
                int extra = TakeAsThief(victim.Deque);
                SetHolder(extra, worker);
                Emit(EventKind.Steal, worker, _tasks[extra].Id, state.Victim, 0);
                state.Deque.Push(extra);
            }

            _futileLooks = 0;
            state.Failed = 0;
            SetHolder(first, worker);
            SetTime(worker, state, WorkerPhase.Start, victim.EndBusyUntil);
            return;
        }

        StartAfter(worker, state, EventKind.Steal, state.Victim, _machine.Steal);
    }

    private int TakeAsThief(TaskDeque deque) =>
        _scheduler.ThiefTakes == ThiefTakes.Oldest ? deque.TakeOldest() : deque.TakeNewest();

    private void SeekShared(int worker, WorkerState state)
    {
        if (_sharedQueue.Count == 0)
        {
            StartWatching(worker, state);
            return;
        }

        long turn = TurnAtSharedQueue(_machine.Take);
        if (turn > _now)
            SetTime(worker, state, WorkerPhase.TakeTurn, turn);
        else
            TakeShared(worker, state);
    }

    private void TakeShared(int worker, WorkerState state)
    {
        if (_sharedQueue.Count == 0)
        {
            // Those served before took all there was; the turn is used up.
            SetTime(worker, state, WorkerPhase.Seek, Later(_machine.Take));
            return;
        }

        state.Item = _scheduler.OwnerTakes == OwnerTakes.Newest ? _sharedQueue.TakeNewest() : _sharedQueue.TakeOldest();
        StartAfter(worker, state, EventKind.Take, -1, _machine.Take);
    }
}
