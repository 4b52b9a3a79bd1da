using Rookery.Notation;
using Rookery.Programs;
using Rookery.Simulation.Policies;
using Rookery.Traces;

namespace Rookery.Simulation.Engine;

/// <summary>One run: workers that act in turn, each at its own time, until the start task has ended.</summary>
/// <remarks>
/// <para>
/// A discrete-event simulation in which every worker has at most one pending time, so the pending events are a
/// <see cref="NextEventTree"/>. The worker whose time comes first does what its <see cref="WorkerPhase"/> says: it
/// changes the shared state at once, emits an event, and sets its next time to now plus what the stretch costs. What
/// is seen and what is gone when it acts on it follows from that order alone; no formula for contention stands
/// anywhere.
/// </para>
/// <para>
/// Sketch: an event costs one call of the evaluator or one victim choice (tens of nanoseconds), one path of the tree
/// (log2 P comparisons) and one append. Memory: a record a live task and a state a worker; a recorded event is 24
/// bytes.
/// </para>
/// <para>Options are read in the parts that decide by them: Running, Seeking, Joining, Queueing, Sleeping,
/// Cores.</para>
/// </remarks>
/// <typeparam name="TSink">Where the events go.</typeparam>
internal sealed partial class RunEngine<TSink> : IRunEngine
    where TSink : struct, IRunSink
{
    /// <summary>
    /// The largest time: a quarter below the range of 64 bits, so that adding two costs never overflows.
    /// </summary>
    private const long ClockMax = 4_000_000_000_000_000_000;

    private readonly BoundProgram _program;
    private readonly TaskEvaluator _evaluator;
    private readonly RunSettings _settings;
    private readonly Scheduler _scheduler;
    private readonly Machine _machine;
    private readonly VictimPolicy _victims;
    private readonly int _patience;
    private readonly NextEventTree _next;
    private readonly List<WorkerState> _workers = [];
    private readonly TaskDeque _sharedQueue = new();
    private TaskState[] _tasks = new TaskState[64];
    private TSink _sink;
    private long _now;
    private long _events;
    private int _taskCount;
    private int _root;
    private bool _isOver;
    private int _futileLooks;

    public RunEngine(BoundProgram program, RunSettings settings, TSink sink)
    {
        _program = program;
        _settings = settings;
        _scheduler = settings.Scheduler;
        _machine = settings.Machine;
        _sink = sink;
        _evaluator = program.CreateEvaluator();
        _victims = VictimPolicy.Of(_scheduler.Victim, unchecked((ulong)program.Seed));
        _patience = _scheduler.PatienceFor(settings.Workers);
        bool hasThreads = _scheduler.Queues == Queues.None;
        _coreCount = settings.Cores;
        _freeCores = _coreCount;
        _sharesCores = hasThreads || _coreCount < settings.Workers;
        _next = new NextEventTree(hasThreads ? 64 : settings.Workers);
        Begin(hasThreads ? 1 : settings.Workers);
    }

    /// <summary>What the events went to.</summary>
    public ref TSink Sink => ref _sink;

    /// <inheritdoc/>
    public long Events => _events;

    /// <inheritdoc/>
    public bool IsOver => _isOver;

    /// <inheritdoc/>
    public Starvation? Starvation { get; private set; }

    /// <inheritdoc/>
    public void Advance(long events)
    {
        long until = events > long.MaxValue - _events ? long.MaxValue : _events + events;
        while (!_isOver && _events < until)
        {
            int worker = _next.Winner;
            long time = _next.TimeOf(worker);
            if (time == NextEventTree.Never)
            {
                Starve();
                return;
            }

            _now = time;
            Act(worker);
        }
    }

    private void Begin(int workers)
    {
        for (int i = 0; i < workers; i++)
            _workers.Add(new WorkerState { VictimCursor = 0 });
        _root = _evaluator.Start();
        InitializeTask(_root, -1, isCalled: false);
        _workers[0].Item = _root;
        _workers[0].Phase = WorkerPhase.Start;
        for (int i = 0; i < workers; i++)
            SetTime(i, _workers[i], _workers[i].Phase, 0);
    }

    private void Act(int worker)
    {
        WorkerState state = _workers[worker];
        if (_sharesCores && !MayAct(worker, state))
            return;
        switch (state.Phase)
        {
            case WorkerPhase.Run:
                Run(worker, state);
                break;
            case WorkerPhase.Seek:
                Seek(worker, state);
                break;
            case WorkerPhase.Start:
                StartItem(worker, state);
                break;
            case WorkerPhase.Look:
                FinishLook(worker, state);
                break;
            case WorkerPhase.Contest:
                FinishContest(worker, state);
                break;
            case WorkerPhase.TakeTurn:
                TakeShared(worker, state);
                break;
            case WorkerPhase.Watch:
                FinishWatch(worker, state);
                break;
            case WorkerPhase.Waking:
                FinishWaking(worker, state);
                break;
            case WorkerPhase.Blocked:
                Unblock(worker, state);
                break;
            case WorkerPhase.Asleep:
            case WorkerPhase.Waiting:
            case WorkerPhase.Alone:
            case WorkerPhase.Gone:
                Invariant.Holds(
                    false, $"Worker {worker} acts in phase {state.Phase} at time {_now}, seed {_program.Seed}.");
                break;
        }
    }

    private void Emit(EventKind kind, int worker, int task, int other, int line)
    {
        if (++_events > _settings.Limits.EventsMax)
            throw new InputException(SimulationErrors.TooManyEvents(_settings.Limits.EventsMax));
        _sink.Event(new TraceEvent(_now, kind, worker, task, other, line));
    }

    private void SetTime(int worker, WorkerState state, WorkerPhase phase, long time)
    {
        if (time > ClockMax)
            throw new InputException(SimulationErrors.ClockOverflow());
        state.Phase = phase;
        _next.Set(worker, time);
    }

    private void SetNever(int worker, WorkerState state, WorkerPhase phase)
    {
        state.Phase = phase;
        _next.Set(worker, NextEventTree.Never);
    }

    private int IdOf(int activation) => activation < 0 ? -1 : _tasks[activation].Id;

    private void InitializeTask(int activation, int parent, bool isCalled)
    {
        if (_taskCount >= _settings.Limits.TasksMax)
            throw new InputException(SimulationErrors.TooManyTasks(_settings.Limits.TasksMax));
        if (activation >= _tasks.Length)
            Array.Resize(ref _tasks, Math.Max(activation + 1, _tasks.Length * 2));
        _tasks[activation] = new TaskState
        {
            Id = _taskCount,
            Parent = parent,
            NewestChild = -1,
            OlderSibling = -1,
            NewerSibling = -1,
            IsCalled = isCalled,
        };
        _sink.Task(_taskCount, _evaluator.DefinitionOf(activation), _evaluator.ArgumentsOf(activation));
        _taskCount++;
    }

    private void Finish()
    {
        for (int i = 0; i < _workers.Count; i++)
        {
            if (_workers[i].Phase != WorkerPhase.Gone)
                Emit(EventKind.Stop, i, -1, -1, 0);
        }

        _isOver = true;
    }
}
