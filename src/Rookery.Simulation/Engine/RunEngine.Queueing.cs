using Rookery.Notation;
using Rookery.Traces;

namespace Rookery.Simulation.Engine;

// Forking: where the child, or the parent's continuation, goes.
internal sealed partial class RunEngine<TSink>
{
    // Until when the shared queue serves those who came before: a first-come-first-served lock.
    private long _sharedBusyUntil;

    // Whether the worker can go on with its current task at this very time. The fork has effect when the parent asks
    // for it; where the shared queue is busy, the parent waits for its turn afterwards, which a fork's stretch can
    // show and a work's stretch must not.
    private bool Fork(int worker, WorkerState state)
    {
        int parent = state.Current;
        int child = state.Item;
        InitializeTask(child, parent, isCalled: false);
        AddChild(parent, child);
        Emit(EventKind.Fork, worker, _tasks[parent].Id, _tasks[child].Id, state.Line);
        long cost = _machine.Fork;
        if (_scheduler.Queues == Queues.Shared)
            cost += TurnAtSharedQueue(_machine.Fork) - _now;
        if (_scheduler.Queues == Queues.None)
        {
            StartThread(child, cost);
            cost += _machine.StartThread;
        }
        else
        {
            bool childFirst = _scheduler.ForkRuns == ForkRuns.Child;
            int item = childFirst ? parent : child;
            _tasks[item].Holder = worker;
            _tasks[child].Holder = worker;
            (_scheduler.Queues == Queues.Shared ? _sharedQueue : state.Deque).Push(item);
            cost += TellOthers(worker);
            if (childFirst)
            {
                SetTime(worker, state, WorkerPhase.Start, Later(cost));
                state.Current = -1;
                return false;
            }
        }

        if (cost == 0)
            return true;
        SetTime(worker, state, WorkerPhase.Run, Later(cost));
        return false;
    }

    private void StartThread(int child, long cost)
    {
        if (_workers.Count >= _settings.Limits.ThreadsMax)
            throw new InputException(SimulationErrors.TooManyThreads(_settings.Limits.ThreadsMax));
        int thread = _workers.Count;
        _workers.Add(new WorkerState { Item = child, Phase = WorkerPhase.Start });
        _next.Grow(_workers.Count);
        _tasks[child].Holder = thread;
        SetTime(thread, _workers[thread], WorkerPhase.Start, Later(cost + _machine.StartThread));
    }

    // The time at which the worker is served; the queue is then busy for what the operation costs.
    private long TurnAtSharedQueue(long cost)
    {
        long turn = Math.Max(_now, _sharedBusyUntil);
        _sharedBusyUntil = turn > ClockMax ? turn : turn + cost;
        return turn;
    }
}
