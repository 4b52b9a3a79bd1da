using System.Diagnostics.CodeAnalysis;
using System.Runtime.ExceptionServices;

namespace Rookery.Pool.Workers;

/// <summary>
/// One call from outside: its first task, whether it is to stop, and how its caller hears of the end.
/// </summary>
/// <remarks>Made by the caller's thread, run by one worker, seen by all that run its tasks.</remarks>
internal abstract class PoolRun(WorkerPool pool, TimeSpan? timeLimit, CancellationToken cancellation)
{
    private readonly object _gate = new();
    private bool _isFinished;
    private bool _isClosed;
    private int _reason;

    /// <summary>Its place in the pool's table, as frames carry it.</summary>
    public int Slot { get; set; }

    /// <summary>What ended it, or null.</summary>
    public ExceptionDispatchInfo? Failure { get; protected set; }

    /// <summary>What the name of its first task can be read from.</summary>
    public abstract object LabelSource { get; }

    /// <summary>Number of tasks when the program numbers them itself; 0 otherwise.</summary>
    public int GivenTasks { get; init; }

    /// <summary>Whether it is to stop.</summary>
    public bool IsStopped => Volatile.Read(ref _reason) != (int)StopReason.None;

    /// <summary>Asks it to stop; the first reason counts.</summary>
    public void Stop(StopReason reason)
    {
        lock (_gate)
        {
            if (_isClosed || _reason != (int)StopReason.None)
                return;
            Volatile.Write(ref _reason, (int)reason);
            pool.AddStopRequest(1);
        }
    }

    /// <summary>Runs the first task on a worker and finishes.</summary>
    public abstract void Execute(WorkerCore core);

    /// <summary>Waits for the end, on the caller's thread.</summary>
    public void WaitForEnd()
    {
        // Stopping is asked for and not enforced: the caller's data must not be in use any more when the call returns.
        using CancellationTokenRegistration asked =
            cancellation.UnsafeRegister(static run => ((PoolRun)run!).Stop(StopReason.Cancelled), this);
        using Timer? limit = timeLimit is { } time
            ? new Timer(static run => ((PoolRun)run!).Stop(StopReason.TimeOver), this, time, Timeout.InfiniteTimeSpan)
            : null;
        pool.Seam?.Until(() => Volatile.Read(ref _isFinished));
        lock (_gate)
        {
            while (!_isFinished)
                Monitor.Wait(_gate);
        }
    }

    /// <summary>The run is over: nobody can stop it any more.</summary>
    public void Close()
    {
        lock (_gate)
        {
            _isClosed = true;
            if (_reason != (int)StopReason.None)
                pool.AddStopRequest(-1);
        }
    }

    /// <summary>Throws what stopped it, if anything did.</summary>
    public void ThrowIfStopped()
    {
        if (Volatile.Read(ref _reason) is var reason and not (int)StopReason.None)
            Throw((StopReason)reason);
    }

    /// <summary>Tells the caller that it is over.</summary>
    protected void SayFinished()
    {
        lock (_gate)
        {
            _isFinished = true;
            Monitor.PulseAll(_gate);
        }
    }

    [DoesNotReturn]
    private void Throw(StopReason reason) => throw (reason switch
    {
        StopReason.Cancelled => new OperationCanceledException("The run was cancelled.", cancellation),
        StopReason.TimeOver => new TimeoutException(
            $"The run took longer than its time limit of {timeLimit}; its tasks were told to stop."),
        StopReason.Starved => PoolErrors.Starved(pool.WorkerCount),
        StopReason.Disposed => new ObjectDisposedException(
            nameof(WorkerPool), "The pool was disposed while this run was going on; its tasks were told to stop."),
        StopReason.None => new InvalidOperationException("The run was not stopped."),
    });
}
