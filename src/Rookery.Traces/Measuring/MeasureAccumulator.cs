namespace Rookery.Traces.Measuring;

/// <summary>
/// Computes the measures while events go by, without keeping them. Mutable, for one thread, used once.
/// </summary>
/// <remarks>
/// Memory: a record a live task and one a worker, and a counter for each distinct amount of stolen work (the exact
/// median needs them). Some tens of nanoseconds an event. Reads any trace; numbers of an unlawful one mean nothing, so
/// audit first.
/// </remarks>
public sealed partial class MeasureAccumulator
{
    private readonly bool _isShared;
    private readonly bool _isThreads;
    private readonly bool _childFirst;
    private readonly bool _suspends;
    private readonly LiveTable<MeasuredTask> _tasks = new();
    private MeasuredWorker[] _workers;
    private int _workerCount;
    private int _sharedLength;
    private long _queued;
    private int _idleWorkers;
    private long _now;
    private long _tasksSeen, _forks, _events, _work, _span, _steals, _stolenTasks, _probes, _empty, _lost;
    private long _deepestDeque, _stackDepth, _live, _liveMost, _deepest, _sleeps, _wakes, _asleep, _idleWhile;
    private long _deviations;
    private Int128 _stolenDepth;

    /// <summary>Starts with no event.</summary>
    /// <param name="inputs">The run's inputs: which options say how the events are to be read.</param>
    public MeasureAccumulator(TraceInputs inputs)
    {
        string queues = inputs.Option("queues", "per-worker");
        _isShared = queues == "shared";
        _isThreads = queues == "none";
        _childFirst = inputs.Option("fork-runs", "parent") == "child";
        _suspends = inputs.Option("at-join", "help") == "suspend";
        _workers = new MeasuredWorker[16];
    }

    /// <summary>Takes the next event, in the order of the trace.</summary>
    public void Add(in TraceEvent item)
    {
        _events++;
        if (item.Time > _now)
        {
            if (_queued > 0)
                _idleWhile += unchecked((item.Time - _now) * _idleWorkers);
            _now = item.Time;
        }

        if (item.Worker >= _workers.Length)
            Array.Resize(ref _workers, Math.Max(item.Worker + 1, _workers.Length * 2));
        ref MeasuredWorker worker = ref _workers[item.Worker];
        if (!worker.HasAppeared)
        {
            worker.HasAppeared = true;
            worker.StrandTask = -1;
            worker.LastKind = EventKind.Stop;
            _workerCount++;
        }

        CloseStretch(ref worker, item.Time);
        if (item.Task >= 0 || item.Kind is EventKind.Probe or EventKind.Empty or EventKind.Sleep or EventKind.Wake)
            Happen(item, ref worker);
        OpenStretch(ref worker, item);
    }

    /// <summary>The measures of all events so far.</summary>
    /// <param name="inputs">The run's inputs, for the number of cores.</param>
    public Measures Build(TraceInputs inputs) => new()
    {
        Tasks = _tasksSeen,
        Forks = _forks,
        Events = _events,
        Work = _work,
        Span = _span,
        Makespan = _now,
        Cores = _isThreads ? inputs.Cores : Math.Min(inputs.Cores, inputs.Workers),
        Workers = _workerCount,
        Steals = _steals,
        StolenTasks = _stolenTasks,
        Probes = _probes,
        EmptyProbes = _empty,
        LostRaces = _lost,
        StolenWorkMean = new(_stolenWork.Sum, _stolenWork.Count),
        StolenWorkMedian = _stolenWork.Median(),
        StolenWorkMax = _stolenWork.Max,
        StolenWorkShare = new(_stolenWork.Sum, _work),
        StolenDepthMean = new(_stolenDepth, _stolenTasks),
        DeepestDeque = _deepestDeque,
        StackDepth = _stackDepth,
        LiveTasks = _liveMost,
        Deepest = _deepest,
        Sleeps = _sleeps,
        Wakes = _wakes,
        TimeAsleep = _asleep,
        IdleWhileTasksWaited = _idleWhile,
        Deviations = _deviations,
    };

    private void CloseStretch(ref MeasuredWorker worker, long time)
    {
        long length = time - worker.LastTime;
        if (worker.LastKind is EventKind.Work or EventKind.Block && worker.LastTask >= 0 && length > 0)
        {
            ref MeasuredTask task = ref _tasks[worker.LastTask];
            task.Path += length;
            _span = Math.Max(_span, task.Start + task.Path);
            if (worker.LastKind == EventKind.Work)
            {
                _work += length;
                PartOf(ref task).Work += length;
            }
        }
        else if (worker.IsAsleep)
        {
            _asleep += length;
            worker.IsAsleep = false;
        }
    }

    private void OpenStretch(ref MeasuredWorker worker, in TraceEvent item)
    {
        worker.LastKind = item.Kind;
        worker.LastTime = item.Time;
        worker.LastTask = item.Task;
        worker.IsAsleep = item.Kind == EventKind.Sleep;
        bool isIdle = item.Kind is EventKind.Probe or EventKind.Empty or EventKind.LostRace or EventKind.JoinWait
            or EventKind.Wake or EventKind.Sleep;
        if (isIdle != worker.IsIdle)
        {
            worker.IsIdle = isIdle;
            _idleWorkers += isIdle ? 1 : -1;
        }
    }

    private void Happen(in TraceEvent item, ref MeasuredWorker worker)
    {
        switch (item.Kind)
        {
            case EventKind.Begin:
                Begin(item, ref worker);
                break;
            case EventKind.End:
                End(item, ref worker);
                break;
            case EventKind.Fork:
            case EventKind.Call:
                if (item.Other >= 0)
                    Descend(item, ref worker);
                break;
            case EventKind.Take:
                Take(item, ref worker);
                break;
            case EventKind.Steal:
                Steal(item, ref worker);
                break;
            case EventKind.JoinWait:
                Wait(item, ref worker);
                break;
            case EventKind.JoinPass:
                Pass(item, ref worker);
                break;
            case EventKind.Probe:
                _probes++;
                break;
            case EventKind.Empty:
                _empty += item.Other >= 0 ? 1 : 0;
                break;
            case EventKind.LostRace:
                _lost++;
                break;
            case EventKind.Sleep:
                _sleeps++;
                break;
            case EventKind.Wake:
                _wakes++;
                break;
            case EventKind.Work:
            case EventKind.Block:
            case EventKind.Unblock:
            case EventKind.Stop:
                break;
        }
    }
}
