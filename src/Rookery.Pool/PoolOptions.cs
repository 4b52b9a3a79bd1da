namespace Rookery.Pool;

/// <summary>How a pool works; the words mean the same as in docs/scheduler.md.</summary>
/// <remarks>Immutable. <see cref="WorkerPool"/> checks it and says which combination is impossible, and why.</remarks>
public sealed record PoolOptions
{
    /// <summary>The most workers that a pool can have.</summary>
    public const int WorkersMax = 1 << 12;

    /// <summary>The largest number of notes that a recording worker can keep.</summary>
    public const int RecordingMax = 1 << 26;

    /// <summary>Workers, 1 to <see cref="WorkersMax"/>; as many as this process may use processors.</summary>
    public int Workers { get; init; } = Math.Min(Environment.ProcessorCount, WorkersMax);

    /// <summary>Where queued tasks wait.</summary>
    public Queues Queues { get; init; }

    /// <summary>How the deques are kept safe.</summary>
    public DequeKind Deque { get; init; }

    /// <summary>Who pays for the fence of the lock-free deque.</summary>
    public FencePlacement Fence { get; init; }

    /// <summary>Which of its own tasks a worker takes; the oldest only from a deque with one lock.</summary>
    public OwnerTakes OwnerTakes { get; init; }

    /// <summary>Which task a thief takes; the newest only from a deque with one lock.</summary>
    public ThiefTakes ThiefTakes { get; init; }

    /// <summary>At whom a worker without work looks.</summary>
    public VictimChoice Victim { get; init; }

    /// <summary>How much a thief moves at once.</summary>
    public StealAmount Amount { get; init; }

    /// <summary>What a worker does at a join whose child another worker runs.</summary>
    public AtJoin AtJoin { get; init; }

    /// <summary>What a worker does that finds nothing.</summary>
    public WhenIdle WhenIdle { get; init; }

    /// <summary>Failed looks in a row before a worker sleeps, at least 1.</summary>
    /// <remarks>
    /// A look takes 10 to 100 ns with its pause, so the default is some tens of microseconds: about what a sleep with
    /// its
    /// wake costs, so that a wrong guess costs at most twice what a right one would (the argument of the ski rental).
    /// </remarks>
    public int Patience { get; init; } = 300;

    /// <summary>Who is woken when a task is queued.</summary>
    public WakePolicy Wake { get; init; }

    /// <summary>What the random choice of victims follows from; each worker draws on its own.</summary>
    public long Seed { get; init; } = 1;

    /// <summary>
    /// Stack of each worker in bytes, 256 KiB to 1 GiB; memory is used only as far as recursion goes.
    /// </summary>
    public int StackBytes { get; init; } = 64 << 20;

    /// <summary>Notes that each worker can keep of a run, 0 to <see cref="RecordingMax"/>; 0 records nothing.</summary>
    /// <remarks>A task takes about three notes, a note 32 bytes. When a worker's notes are full the recording ends
    /// there, and says so; the run goes on.</remarks>
    public int RecordingCapacity { get; init; }

    /// <summary>What the workers' threads are called in a debugger.</summary>
    public string Name { get; init; } = "pool";

    /// <summary>Whether forks and joins take the short way: the lock-free deque, and no recording.</summary>
    internal bool IsFast => Queues == Queues.PerWorker && Deque == DequeKind.LockFree && RecordingCapacity == 0;

    /// <summary>Throws for what cannot be.</summary>
    /// <exception cref="ArgumentException">The message says which option, its range or what it excludes, and
    /// why.</exception>
    internal void Validate()
    {
        Within(Workers, 1, WorkersMax, nameof(Workers));
        Within(Patience, 1, int.MaxValue, nameof(Patience));
        Within(StackBytes, 256 << 10, 1 << 30, nameof(StackBytes));
        Within(RecordingCapacity, 0, RecordingMax, nameof(RecordingCapacity));
        bool hasDeques = Queues == Queues.PerWorker;
        Refuse(!hasDeques && (Victim != default || Amount != default || ThiefTakes != default),
            "With one shared queue nobody has a deque to steal from: Victim, Amount and ThiefTakes make no sense.");
        Refuse(!hasDeques && Deque != default, "With one shared queue there is no deque whose kind could be chosen.");
        Refuse(!hasDeques && OwnerTakes != default, "A shared queue gives its tasks in the order in which they came.");
        Refuse(!hasDeques && AtJoin == AtJoin.Leapfrog, "Leapfrogging steals from a deque; a shared queue has none.");
        Refuse(hasDeques && Deque != DequeKind.OneLock && OwnerTakes == OwnerTakes.Oldest,
            "Only the deque with one lock gives its owner the oldest task: choose Deque = OneLock.");
        Refuse(hasDeques && Deque != DequeKind.OneLock && ThiefTakes == ThiefTakes.Newest,
            "Only the deque with one lock gives thieves the newest task: choose Deque = OneLock.");
        Refuse(RecordingCapacity > 0 && Amount == StealAmount.Half,
            "A trace tells half a deque as one steal, and thieves here move its tasks one by one: record with "
                + "Amount = One.");
        Refuse(RecordingCapacity > 0 && hasDeques && AtJoin == AtJoin.Wait,
            "In a trace a worker that waits under AtJoin = Wait does nothing, and here it runs the awaited child "
                + "itself when nobody else has it: record with AtJoin = Help or Leapfrog.");
        Refuse(AtJoin == AtJoin.Leapfrog && OwnerTakes == OwnerTakes.Oldest,
            "A leapfrogging worker runs the waiting task's own children first, which are the newest.");
    }

    private static void Within(int value, int least, int most, string name)
    {
        if (value < least || value > most)
            throw new ArgumentOutOfRangeException(name, value, $"{name} is {value}; it can be {least} to {most}.");
    }

    private static void Refuse(bool isWrong, string reason)
    {
        if (isWrong)
            throw new ArgumentException(reason);
    }
}
