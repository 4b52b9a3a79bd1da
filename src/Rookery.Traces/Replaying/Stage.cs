using System.Collections.Immutable;

namespace Rookery.Traces.Replaying;

/// <summary>The whole state of a run after its first <see cref="Step"/> events.</summary>
/// <remarks>Immutable, safe to read from several threads; see <see cref="Replay"/>.</remarks>
public sealed record Stage
{
    private readonly Replay _replay;

    internal Stage(
        Replay replay, int step, long time, ImmutableArray<WorkerStage> workers, ImmutableList<int> sharedQueue)
    {
        _replay = replay;
        Step = step;
        Time = time;
        Workers = workers;
        SharedQueue = sharedQueue;
    }

    /// <summary>Number of events that have happened.</summary>
    public int Step { get; }

    /// <summary>Time of the last of them; 0 before the first.</summary>
    public long Time { get; }

    /// <summary>The workers, by number.</summary>
    public ImmutableArray<WorkerStage> Workers { get; }

    /// <summary>The queue that all share: index 0 is the oldest. Empty with other kinds of queues.</summary>
    public ImmutableList<int> SharedQueue { get; }

    /// <summary>Tasks in all queues together.</summary>
    public int QueuedTasks => SharedQueue.Count + Workers.Sum(w => w.Deque.Count);

    /// <summary>
    /// The work done by all workers; a stretch in progress counts for as long as it has lasted. Logarithmic time.
    /// </summary>
    public long WorkDone => DoneIn(0, _replay.Tasks.Count);

    /// <summary>Whether a task has begun.</summary>
    public bool HasBegun(int task) => IsPast(_replay.Tasks[task].BeginStep);

    /// <summary>Whether a task has ended.</summary>
    public bool HasEnded(int task) => IsPast(_replay.Tasks[task].EndStep);

    /// <summary>The work that a task and its descendants still contain: all of it less what has been done by
    /// now.</summary>
    /// <remarks>A stretch of work in progress counts as done for as long as it has lasted. Logarithmic time.</remarks>
    /// <param name="task">A task of the table.</param>
    public long RemainingWork(int task)
    {
        ref readonly TaskRecord record = ref _replay.Tasks[task];
        if (!IsPast(record.BeginStep))
            return record.TotalWork;
        int place = _replay.Tasks.PlaceOf(task);
        return Durations.Between(DoneIn(place, place + _replay.Tasks.PlacesOf(task)), record.TotalWork);
    }

    /// <summary>The work that goes with a queued task when it is taken.</summary>
    /// <remarks>
    /// For a task that has not begun, all of it. For a continuation, what it and the callers that move with it will
    /// still do themselves or fork later, without the children that already exist: those run or are queued elsewhere.
    /// </remarks>
    /// <param name="task">A task of the table.</param>
    public long MovableWork(int task)
    {
        TaskTable tasks = _replay.Tasks;
        if (!HasBegun(task))
            return tasks[task].TotalWork;
        long sum = 0;
        foreach (int member in tasks.CallChainOf(task))
        {
            int place = tasks.PlaceOf(member);
            int later = place + 1;
            int created = tasks.CreatedChildren(member, Step);
            if (created > 0)
            {
                int youngest = tasks.ChildrenOf(member)[created - 1];
                later = tasks.PlaceOf(youngest) + tasks.PlacesOf(youngest);
            }

            long own = Durations.Between(DoneIn(place, place + 1), tasks[member].OwnWork);
            long unborn = _replay.Work.TotalOf(later, place + tasks.PlacesOf(member));
            sum = Durations.Sum(sum, Durations.Sum(own, unborn));
        }

        return sum;
    }

    private bool IsPast(int step) => step >= 0 && step < Step;

    private long DoneIn(int fromPlace, int toPlace)
    {
        long done = _replay.Work.DoneBefore(Step, fromPlace, toPlace);
        foreach (WorkerStage worker in Workers)
        {
            if (worker.Stretch != Stretch.Working || worker.CurrentTask < 0)
                continue;
            int place = _replay.Tasks.PlaceOf(worker.CurrentTask);
            if (place >= fromPlace && place < toPlace)
                done = Durations.Sum(done, Durations.Between(worker.Since, Time));
        }

        return done;
    }
}
