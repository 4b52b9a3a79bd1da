using Rookery.Notation;
using Rookery.Programs;
using Rookery.Traces;

namespace Rookery.Simulation.Engine;

// Running a task: its work, forks, calls, waits outside the processor, and its end.
internal sealed partial class RunEngine<TSink>
{
    // Goes on with the current task until something takes time; the next loop turn is the next action at the same time.
    private void Run(int worker, WorkerState state)
    {
        _futileLooks = 0;
        if (state.WorkLeft > 0)
        {
            Work(worker, state);
            return;
        }

        while (true)
        {
            int task = state.Current;
            ActionKind action = _evaluator.Next(task);
            switch (action)
            {
                case ActionKind.Work:
                    state.WorkLeft = OnMachine(_evaluator.Units);
                    state.Line = _evaluator.Line;
                    Emit(EventKind.Work, worker, _tasks[task].Id, -1, state.Line);
                    Work(worker, state);
                    return;
                case ActionKind.Block:
                    Emit(EventKind.Block, worker, _tasks[task].Id, -1, _evaluator.Line);
                    state.Line = _evaluator.Line;
                    SetTime(worker, state, WorkerPhase.Blocked, Later(OnMachine(_evaluator.Units)));
                    ReleaseCore(state);
                    return;
                case ActionKind.Call:
                    Call(worker, state, _evaluator.Child, _evaluator.Line);
                    break;
                case ActionKind.Fork:
                    state.Item = _evaluator.Child;
                    state.Line = _evaluator.Line;
                    if (!Fork(worker, state))
                        return;
                    break;
                case ActionKind.Join:
                    if (!Join(worker, state, _evaluator.Line))
                        return;
                    break;
                case ActionKind.End:
                    EndTask(worker, state, task, _evaluator.Line);
                    if (state.Current < 0 || _isOver)
                        return;
                    break;
            }
        }
    }

    private void Work(int worker, WorkerState state)
    {
        if (state.WasPreempted)
        {
            state.WasPreempted = false;
            Emit(EventKind.Work, worker, _tasks[state.Current].Id, -1, state.Line);
        }

        long part = _sharesCores ? Math.Min(state.WorkLeft, Math.Max(1, state.SliceEnd - _now)) : state.WorkLeft;
        state.WorkLeft -= part;
        SetTime(worker, state, WorkerPhase.Run, Later(part));
    }

    private void Call(int worker, WorkerState state, int callee, int line)
    {
        int caller = state.Current;
        InitializeTask(callee, caller, isCalled: true);
        Emit(EventKind.Call, worker, _tasks[caller].Id, _tasks[callee].Id, line);
        state.Current = callee;
        BeginTask(worker, callee);
    }

    private void BeginTask(int worker, int task)
    {
        ref TaskState it = ref _tasks[task];
        it.HasBegun = true;
        it.Holder = worker;
        int line = _program.Definitions[_evaluator.DefinitionOf(task)].Line;
        Emit(EventKind.Begin, worker, it.Id, IdOf(it.Parent), line);
    }

    private void StartItem(int worker, WorkerState state)
    {
        int task = state.Item;
        state.Current = task;
        state.Phase = WorkerPhase.Run;
        if (_tasks[task].HasBegun)
            _tasks[task].Holder = worker;
        else
            BeginTask(worker, task);
        Run(worker, state);
    }

    private void Unblock(int worker, WorkerState state)
    {
        Emit(EventKind.Unblock, worker, _tasks[state.Current].Id, -1, state.Line);
        state.Phase = WorkerPhase.Run;
        Run(worker, state);
    }

    // The task has ended and nothing that it forked is left. What comes next depends on who waits for it.
    private void EndTask(int worker, WorkerState state, int task, int line)
    {
        TaskState ended = _tasks[task];
        Invariant.Holds(
            ended.Outstanding == 0,
            $"Task {ended.Id} ends with {ended.Outstanding} children, seed {_program.Seed}.");
        Emit(EventKind.End, worker, ended.Id, IdOf(ended.Parent), line);
        _evaluator.Release(task);
        if (ended.Parent < 0)
        {
            state.Current = -1;
            Finish();
            return;
        }

        if (ended.IsCalled)
        {
            // Whoever ends the callee goes on with the caller, also when it began on another worker.
            state.Current = ended.Parent;
            _tasks[ended.Parent].Holder = worker;
            return;
        }

        RemoveChild(ended.Parent, ended);
        state.Current = -1;
        if (_tasks[ended.Parent].Outstanding == 0 && _tasks[ended.Parent].IsWaiting)
            ChildrenEnded(worker, state, ended.Parent);
        else
            AfterTask(worker, state, _now);
    }

    // The worker has no task in hand: a thread ends with its task, a worker looks for another.
    private void AfterTask(int worker, WorkerState state, long from)
    {
        if (_scheduler.Queues == Queues.None && state.Waiting.Count == 0)
        {
            Emit(EventKind.Stop, worker, -1, -1, 0);
            SetNever(worker, state, WorkerPhase.Gone);
            ReleaseCore(state);
            return;
        }

        SetTime(worker, state, WorkerPhase.Seek, from);
    }

    private void AddChild(int parent, int child)
    {
        ref TaskState it = ref _tasks[parent];
        it.Outstanding++;
        it.HasForked = true;
        _tasks[child].OlderSibling = it.NewestChild;
        if (it.NewestChild >= 0)
            _tasks[it.NewestChild].NewerSibling = child;
        it.NewestChild = child;
    }

    private void RemoveChild(int parent, in TaskState child)
    {
        ref TaskState it = ref _tasks[parent];
        it.Outstanding--;
        if (child.NewerSibling >= 0)
            _tasks[child.NewerSibling].OlderSibling = child.OlderSibling;
        else
            it.NewestChild = child.OlderSibling;
        if (child.OlderSibling >= 0)
            _tasks[child.OlderSibling].NewerSibling = child.NewerSibling;
    }

    // Units of the program as time of the machine; what is too long runs into the end of the clock, which says so.
    private long OnMachine(long units) => _settings.UnitLength == 1
        ? units
        : (long)Int128.Min((Int128)units * _settings.UnitLength, ClockMax + 1);

    private long Later(long duration) => duration > ClockMax - _now ? ClockMax + 1 : _now + duration;
}
