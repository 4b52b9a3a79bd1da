using Rookery.Traces;

namespace Rookery.Simulation.Engine;

// Joins: passing, waiting, and what the end of the last child sets off.
internal sealed partial class RunEngine<TSink>
{
    // Whether the task passes at once. Otherwise the worker has been told what to do instead.
    private bool Join(int worker, WorkerState state, int line)
    {
        int task = state.Current;
        ref TaskState it = ref _tasks[task];
        if (!it.HasForked)
            return true;
        if (it.Outstanding == 0)
        {
            it.HasForked = false;
            Emit(EventKind.JoinPass, worker, it.Id, -1, line);
            return true;
        }

        it.IsWaiting = true;
        it.JoinLine = line;
        it.Holder = worker;
        Emit(EventKind.JoinWait, worker, it.Id, _tasks[it.NewestChild].Id, line);
        state.Current = -1;
        switch (_scheduler.AtJoin)
        {
            case AtJoin.Help:
            case AtJoin.Leapfrog:
                state.Waiting.Push(task);
                SetTime(worker, state, WorkerPhase.Seek, _now);
                break;
            case AtJoin.Wait:
                state.Waiting.Push(task);
                Emit(EventKind.Sleep, worker, -1, -1, 0);
                state.AsleepFrom = Later(_machine.Sleep);
                SetNever(worker, state, WorkerPhase.Waiting);
                ReleaseCore(state);
                break;
            case AtJoin.Suspend:
                SetTime(worker, state, WorkerPhase.Seek, _now);
                break;
        }

        return false;
    }

    // The last child of a waiting task has ended on this worker.
    private void ChildrenEnded(int worker, WorkerState state, int parent)
    {
        if (_scheduler.AtJoin == AtJoin.Suspend)
        {
            Pass(worker, state, parent);
            return;
        }

        int holder = _tasks[parent].Holder;
        WorkerState other = _workers[holder];
        long from = _now;
        if (holder != worker && IsOnTop(other, parent))
        {
            if (other.Phase is WorkerPhase.Waiting or WorkerPhase.Asleep)
            {
                Signal(worker, holder, 1);
                from = Later(_machine.Signal);
            }
            else if (other.Phase == WorkerPhase.Watch)
            {
                StopWatching(holder, other);
            }
            else if (other.Phase == WorkerPhase.Alone)
            {
                SetTime(holder, other, WorkerPhase.Seek, _now);
            }
        }

        AfterTask(worker, state, from);
    }

    private static bool IsOnTop(WorkerState state, int task) =>
        state.Current < 0 && state.Waiting.Count > 0 && state.Waiting.Peek() == task;

    private bool IsReady(WorkerState state) =>
        state.Waiting.Count > 0 && _tasks[state.Waiting.Peek()].Outstanding == 0;

    // The waiting task goes on, on this worker.
    private void Pass(int worker, WorkerState state, int task)
    {
        ref TaskState it = ref _tasks[task];
        it.IsWaiting = false;
        it.HasForked = false;
        it.Holder = worker;
        state.Current = task;
        Emit(EventKind.JoinPass, worker, it.Id, -1, it.JoinLine);
        SetTime(worker, state, WorkerPhase.Run, _now);
    }
}
