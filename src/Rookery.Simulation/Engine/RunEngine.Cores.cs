using Rookery.Traces;

namespace Rookery.Simulation.Engine;

// Cores, where there are fewer than workers: time slices in turn, and who runs when one is free.
internal sealed partial class RunEngine<TSink>
{
    private readonly int _coreCount;
    private readonly bool _sharesCores;
    private readonly Queue<int> _ready = new();
    private int _freeCores;

    // Whether the worker has a core for what it wants to do now. Slices end between operations only, or within work.
    private bool MayAct(int worker, WorkerState state)
    {
        if (!state.HasCore)
        {
            if (_freeCores == 0)
            {
                _ready.Enqueue(worker);
                SetNever(worker, state, state.Phase);
                return false;
            }

            _freeCores--;
            state.HasCore = true;
            state.SliceEnd = Later(_machine.Slice);
            return true;
        }

        if (_now < state.SliceEnd)
            return true;
        if (_ready.Count == 0)
        {
            state.SliceEnd = Later(_machine.Slice);
            return true;
        }

        // In the middle of an operation the slice is overdrawn, not renewed: it ends with the operation.
        if (state.Phase is not (WorkerPhase.Run or WorkerPhase.Seek or WorkerPhase.Watch))
            return true;
        Preempt(worker, state);
        return false;
    }

    private void Preempt(int worker, WorkerState state)
    {
        Emit(EventKind.Stop, worker, IdOf(state.Current), -1, 0);
        state.WasPreempted = state.WorkLeft > 0;
        SetNever(worker, state, state.Phase);
        ReleaseCore(state);
        _ready.Enqueue(worker);
    }

    private void ReleaseCore(WorkerState state)
    {
        if (!_sharesCores)
            return;
        state.HasCore = false;
        if (_ready.Count == 0)
        {
            _freeCores++;
            return;
        }

        int next = _ready.Dequeue();
        WorkerState other = _workers[next];
        other.HasCore = true;
        long start = Later(_machine.Switch);
        other.SliceEnd = Math.Min(ClockMax, start + _machine.Slice);
        SetTime(next, other, other.Phase, start);
    }
}
