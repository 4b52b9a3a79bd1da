using Rookery.Pool.Deques;
using Rookery.Pool.Workers;

namespace Rookery.Pool;

/// <summary>A fixed number of threads that run fork/join programs by work stealing.</summary>
/// <remarks>
/// <para>
/// The threads start with the pool and end with <see cref="Dispose"/>. <see
/// cref="Run{TState,TResult}(ForkFunction{TState,
/// TResult},TState,TimeSpan?,CancellationToken)"/> may be called from any thread, many at a time, and waits for the
/// result; inside a task of the same pool it is an ordinary call.
/// </para>
/// <para>
/// Example: <c>using var pool = new WorkerPool(); long n = pool.Run(Fib, 30);</c>
/// </para>
/// </remarks>
public sealed partial class WorkerPool : IDisposable
{
    [ThreadStatic]
    private static WorkerCore? s_current;

    private readonly object _gate = new();
    private readonly Thread[] _threads;
    private readonly Queue<PoolRun> _runs = new();
    private readonly List<PoolRun?> _slots = [];
    private Frame[] _frames = new Frame[64];
    private int _frameCount;
    private int _waitingRuns;
    private int _openRuns;
    private bool _isDisposed;
    private bool _isClosed;

    // A task may catch what a call of its own threw; children of that call are then left behind, and this is how we
    // know.
    static WorkerPool() =>
        AppDomain.CurrentDomain.FirstChanceException += static (_, _) => s_current?.CountThrown();

    /// <summary>Starts a pool with a worker for each processor that this process may use.</summary>
    public WorkerPool()
        : this(new PoolOptions())
    {
    }

    /// <summary>Starts a pool.</summary>
    /// <exception cref="ArgumentException">An option is out of its range, or options exclude each other.</exception>
    public WorkerPool(PoolOptions options)
        : this(options, null, null)
    {
    }

    /// <summary>Starts a pool under a test's scheduler.</summary>
    /// <param name="options">How it works.</param>
    /// <param name="seam">The scheduler's side; null for the operating system's.</param>
    /// <param name="makeQueue">Makes each worker's deque; null for the one of the options.</param>
    internal WorkerPool(PoolOptions options, IPoolSeam? seam, Func<WorkQueue>? makeQueue)
    {
        options.Validate();
        Options = options;
        Seam = seam;
        if (options.Queues == Queues.Shared)
            SharedQueue = new SharedQueue();
        Workers = new WorkerCore[options.Workers];
        for (int i = 0; i < Workers.Length; i++)
            Workers[i] = new(this, i, makeQueue?.Invoke());
        _threads = new Thread[options.Workers];
        for (int i = 0; i < _threads.Length; i++)
            _threads[i] = Start(Workers[i]);
    }

    /// <summary>How it works.</summary>
    public PoolOptions Options { get; }

    /// <summary>How many workers it has.</summary>
    public int WorkerCount => Options.Workers;

    internal WorkQueue? SharedQueue { get; }

    internal WorkerCore[] Workers { get; }

    internal IPoolSeam? Seam { get; }

    internal bool IsClosed => Volatile.Read(ref _isClosed);

    internal bool HasRuns => Volatile.Read(ref _waitingRuns) > 0;

    /// <summary>Stops what is running, lets it unwind, and ends the threads.</summary>
    /// <remarks>
    /// Callers of runs that were going on get an <see cref="ObjectDisposedException"/>. Waits for tasks to reach
    /// their next
    /// fork, join or question whether to stop. Calling it again does nothing.
    /// </remarks>
    /// <exception cref="PoolMisuseException">A task of this pool called it.</exception>
    public void Dispose()
    {
        PoolErrors.ThrowIfInside(s_current?.Pool == this);
        PoolRun[] going;
        lock (_gate)
        {
            _isDisposed = true;
            going = [.. _slots.OfType<PoolRun>()];
        }

        foreach (PoolRun run in going)
            run.Stop(StopReason.Disposed);
        lock (_gate)
        {
            // Workers leave only when the last run has unwound: its tasks are spread over all of them.
            while (_openRuns > 0)
                Monitor.Wait(_gate);
            Volatile.Write(ref _isClosed, true);
        }

        WakeAll();
        foreach (Thread thread in _threads)
        {
            if (Seam is null)
                thread.Join();
            else
                Seam.Join(thread);
        }

        foreach (WorkerCore worker in Workers)
            worker.Dispose();
    }

    private Thread Start(WorkerCore core)
    {
        void Body()
        {
            s_current = core;
            core.Live();
        }

        if (Seam is not null)
        {
            Thread controlled = Seam.Create(Body, Options.StackBytes);
            Seam.Start(controlled);
            return controlled;
        }

        var thread = new Thread(Body, Options.StackBytes)
        {
            IsBackground = true,
            Name = $"{Options.Name} {core.Number}",
        };
        thread.Start();
        return thread;
    }
}
