using Rookery.Pool.Workers;

namespace Rookery.Pool;

/// <content>Calls from outside.</content>
public sealed partial class WorkerPool
{
    /// <summary>Runs a task and everything that it forks, and waits for its result.</summary>
    /// <param name="task">The first task.</param>
    /// <param name="timeLimit">Asks the run to stop after this time; null for no limit.</param>
    /// <param name="cancellation">
    /// Asks the run to stop. Tasks stop at their next fork or join, or when they ask; the call returns when all have.
    /// </param>
    /// <returns>What the first task computed.</returns>
    /// <exception cref="OperationCanceledException">It was cancelled before it ended.</exception>
    /// <exception cref="TimeoutException">Its time was over before it ended.</exception>
    /// <exception cref="ObjectDisposedException">The pool is disposed, or was before the run ended.</exception>
    /// <exception cref="PoolStarvedException">Every worker waited for a queued task.</exception>
    /// <exception cref="PoolMisuseException">A task left a child unjoined, or joined what is not its own.</exception>
    /// <remarks>An exception that leaves the first task is thrown here, with its stack.</remarks>
    public TResult Run<TTask, TResult>(
        TTask task, TimeSpan? timeLimit = null, CancellationToken cancellation = default)
        where TTask : IForkTask<TResult>
    {
        if (timeLimit is { } limit && (limit <= TimeSpan.Zero || limit.TotalMilliseconds > int.MaxValue))
        {
            throw new ArgumentOutOfRangeException(
                nameof(timeLimit), timeLimit, "The time limit has to be more than nothing, and less than 24 days.");
        }

        // A task of this pool that calls the pool goes on by itself: waiting for another worker could wait for ever.
        if (s_current is { } core && core.Pool == this)
        {
            cancellation.ThrowIfCancellationRequested();
            return task.Run(new Worker(core));
        }

        var run = new PoolRun<TTask, TResult>(this, task, timeLimit, cancellation)
        {
            GivenTasks = task is INumberedTask numbered ? numbered.Count : 0,
        };
        Submit(run);
        run.WaitForEnd();
        Retire(run);
        run.Failure?.Throw();
        return run.Result;
    }

    /// <inheritdoc cref="Run{TTask,TResult}(TTask,TimeSpan?,CancellationToken)"/>
    /// <param name="function">The first function; a static one, or a lambda that captures nothing.</param>
    /// <param name="state">What it needs to know.</param>
    /// <param name="timeLimit">Asks the run to stop after this time; null for no limit.</param>
    /// <param name="cancellation">Asks the run to stop.</param>
    public TResult Run<TState, TResult>(
        ForkFunction<TState, TResult> function, TState state, TimeSpan? timeLimit = null,
        CancellationToken cancellation = default) =>
        Run<FunctionTask<TState, TResult>, TResult>(new(function, state), timeLimit, cancellation);

    /// <inheritdoc cref="Run{TTask,TResult}(TTask,TimeSpan?,CancellationToken)"/>
    /// <param name="action">The first action; a static one, or a lambda that captures nothing.</param>
    /// <param name="state">What it needs to know.</param>
    /// <param name="timeLimit">Asks the run to stop after this time; null for no limit.</param>
    /// <param name="cancellation">Asks the run to stop.</param>
    public void Run<TState>(
        ForkAction<TState> action, TState state, TimeSpan? timeLimit = null,
        CancellationToken cancellation = default) =>
        Run<ActionTask<TState>, Nothing>(new(action, state), timeLimit, cancellation);

    /// <summary>The next call from outside, if one waits.</summary>
    internal PoolRun? TakeRun()
    {
        if (!HasRuns)
            return null;
        lock (_gate)
        {
            if (!_runs.TryDequeue(out PoolRun? run))
                return null;
            Volatile.Write(ref _waitingRuns, _runs.Count);
            return run;
        }
    }

    internal PoolRun? RunAt(int slot)
    {
        // Only read by workers with a task of that run, so the place holds it. The list may be grown meanwhile by
        // another
        // caller, hence the lock; this happens once a steal, not once a fork.
        lock (_gate)
            return slot < _slots.Count ? _slots[slot] : null;
    }

    private void Submit(PoolRun run)
    {
        lock (_gate)
        {
            ObjectDisposedException.ThrowIf(_isDisposed, this);
            if (Options.RecordingCapacity > 0 && _openRuns > 0)
                throw PoolErrors.RecordsOneRun();
            int slot = _slots.IndexOf(null);
            if (slot < 0)
            {
                slot = _slots.Count;
                if (slot == WorkerCore.SlotsMax)
                    throw new InvalidOperationException(
                        $"A pool can do {WorkerCore.SlotsMax} runs at one time, no more.");
                _slots.Add(null);
            }

            run.Slot = slot;
            _slots[slot] = run;
            _openRuns++;
            StartRecording();
            _runs.Enqueue(run);
            Volatile.Write(ref _waitingRuns, _runs.Count);
        }

        // order: full; the run is queued before sleepers are looked for. pairs with: the barrier in WorkerCore.Sleep.
        // else: a
        // run that nobody hears of.
        Interlocked.MemoryBarrier();
        WakeForRun();
    }

    private void Retire(PoolRun run)
    {
        run.Close();
        lock (_gate)
        {
            _slots[run.Slot] = null;
            StopRecording(run);
            _openRuns--;
            Monitor.PulseAll(_gate);
        }
    }
}
