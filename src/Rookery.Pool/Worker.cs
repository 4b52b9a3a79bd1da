using System.Runtime.CompilerServices;
using Rookery.Pool.Workers;

namespace Rookery.Pool;

/// <summary>The worker that runs the current task: through it a task forks, joins and loops.</summary>
/// <remarks>
/// <para>
/// A <c>ref struct</c>, so that the compiler keeps it where it is valid: it can be passed on, and cannot be captured
/// by a
/// lambda, stored in an object, or carried to another thread.
/// </para>
/// <para>
/// Example: <c>fib(10)</c> is 55, with 88 forks.
/// <code>
/// static long Fib(Worker worker, int n)
/// {
///     if (n &lt; 2)
///         return n;
///     var left = worker.Fork(Fib, n - 1);
///     long right = Fib(worker, n - 2);
///     return worker.Join(left) + right;
/// }
/// </code>
/// </para>
/// <para>
/// Cost (bench/): a fork and its join add 2 to 4 ns to a plain call, and allocate nothing once the depth has been
/// reached
/// before.
/// </para>
/// </remarks>
public readonly ref partial struct Worker
{
    private readonly WorkerCore _core;

    internal Worker(WorkerCore core) => _core = core;

    /// <summary>The worker's number, from 0.</summary>
    public int Number => _core.Number;

    /// <summary>The pool that it belongs to.</summary>
    public WorkerPool Pool => _core.Pool;

    /// <summary>Whether the run is to stop: cancelled, out of time, or the pool disposed.</summary>
    /// <remarks>Every fork looks at this by itself; a task that computes for long without one should ask.</remarks>
    public bool IsStopRequested => _core.CurrentRun!.IsStopped;

    internal WorkerCore Core => _core;

    /// <summary>Ends the task when <see cref="IsStopRequested"/>.</summary>
    /// <exception cref="OperationCanceledException">The run was cancelled.</exception>
    /// <exception cref="TimeoutException">The run's time is over.</exception>
    /// <exception cref="ObjectDisposedException">The pool was disposed.</exception>
    public void ThrowIfStopRequested() => _core.CurrentRun!.ThrowIfStopped();

    /// <summary>Makes a child that may run in parallel with what follows, up to its join.</summary>
    /// <param name="task">What the child does.</param>
    /// <returns>What to give to <see cref="Join{TTask,TResult}(Forked{TTask,TResult})"/>.</returns>
    /// <exception cref="OperationCanceledException">The run was cancelled.</exception>
    /// <exception cref="TimeoutException">The run's time is over.</exception>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Forked<TTask, TResult> Fork<TTask, TResult>(TTask task)
        where TTask : IForkTask<TResult>
    {
        unchecked
        {
            // The fast path: the frame of this depth exists, and the deque is the lock-free one. In a pool with another
            // deque, or one that records, Stores is empty, so that what is not used costs nothing here.
            WorkerCore core = _core;
            object[] stores = core.Stores;
            int type = FrameType<TTask, TResult>.Index;
            if ((uint)type < (uint)stores.Length)
            {
                var frames = Unsafe.As<Frame<TTask, TResult>[]>(stores[type]);
                long key = core.Key;
                if ((uint)key < (uint)frames.Length)
                {
                    Frame<TTask, TResult> frame = frames[(uint)key];
                    long word = core.NextWord;
                    core.NextWord = word + WorkerCore.WordStep;
                    frame.Body = task;
                    frame.Word = word;
                    core.Key = key + 1;
                    core.Deque.Push(frame.Number);

                    // order: acquire, after the release in Push; the two stay in program order in machine code, and the
                    // store may still be on its way. Why no fence: a worker that is about to sleep raises Attention,
                    // has a
                    // barrier run on all processors, and looks at all deques then, so either we see it or it sees our
                    // task.
                    if (Volatile.Read(ref core.Attention) != 0)
                        core.Attend();
                    return new(frame, word);
                }
            }
        }

        return _core.ForkSlow<TTask, TResult>(task);
    }

    /// <summary>Waits for a child; runs it here and now when nobody else has begun it.</summary>
    /// <param name="forked">The child. Children may be joined in any order; the youngest first is quickest.</param>
    /// <returns>What the child computed.</returns>
    /// <exception cref="PoolMisuseException">It was joined before, or forked by another worker.</exception>
    /// <remarks>Whatever exception ended the child is thrown here, with the stack of the place where it
    /// arose.</remarks>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public TResult Join<TTask, TResult>(Forked<TTask, TResult> forked)
        where TTask : IForkTask<TResult>
    {
        unchecked
        {
            WorkerCore core = _core;
            Frame<TTask, TResult>? frame = forked.Frame;

            // A word that is still as the fork left it says that the child was not joined and has not ended. That its
            // number is
            // the one at the bottom of our deque says that it is ours, the youngest, and that nobody has begun it.
            int taken = -1;
            if (frame is not null && frame.Word == forked.Word)
            {
                taken = core.Deque.TakeNewest();
                if (taken == frame.Number)
                {
                    TTask body = frame.Body;
                    core.Key = frame.Key;
                    return body.Run(this);
                }
            }

            return core.JoinSlow(frame, forked.Word, taken);
        }
    }
}
