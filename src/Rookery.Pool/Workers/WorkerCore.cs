using System.Runtime.CompilerServices;
using Rookery.Pool.Deques;
using Rookery.Pool.Recording;

namespace Rookery.Pool.Workers;

/// <summary>A worker: its thread, its deque, its open children, and what it is doing.</summary>
/// <remarks>
/// Mutable. Everything is for the worker's own thread alone, but for the queue, whose thieves may be anybody, and
/// <see cref="SleepsFor"/>. The parts: this file, what it is; <c>.Joining</c>, forks and joins off the fast path;
/// <c>.Seeking</c>, where work comes from; <c>.Sleeping</c>, how it rests.
/// </remarks>
internal sealed partial class WorkerCore : IDisposable
{
    /// <summary>Distance of two forks in <see cref="NextWord"/>: state and run lie below.</summary>
    public const long WordStep = 1 << 16;

    /// <summary>Where the run's place lies in a frame's word.</summary>
    public const int SlotShift = 2;

    /// <summary>Runs that can go on at one time, as the bits of a word allow.</summary>
    public const int SlotsMax = 1 << 13;

    /// <summary>What <see cref="Attention"/> grows by for each run that is to stop.</summary>
    public const int StopRequest = 1 << 16;

    private const int KeyShift = 32;
    private const int DepthMax = 1 << 24;

    /// <summary>Frames by type and depth for the fast path; empty when there is none.</summary>
    public object[] Stores = [];

    /// <summary>
    /// Number of open children; its upper half is <see cref="BaseKey"/>, so that one word says whose they are.
    /// </summary>
    public long Key;

    /// <summary>The word of the next fork: a serial number, and below it the place of the current run.</summary>
    /// <remarks>Serial numbers begin at 1: 0 is that of frames that were never used
    /// (<see cref="OpenFrame"/>).</remarks>
    public long NextWord = WordStep;

    /// <summary>The lock-free deque; one that nobody uses where the pool has another kind.</summary>
    public readonly LockFreeDeque<NoSteps> Deque;

    /// <summary>
    /// Sleeping workers, and above them (<see cref="StopRequest"/>) runs that are to stop; every fork looks at it.
    /// </summary>
    /// <remarks>Written with the pool's lock, the same for every worker: a copy in each saves each fork a
    /// step.</remarks>
    public int Attention;

    private object[] _allStores = [];

    public WorkerCore(WorkerPool pool, int number, WorkQueue? queue)
    {
        Pool = pool;
        Number = number;
        IsFast = pool.Options.IsFast && queue is null;
        BaseKey = (long)number << KeyShift;
        Key = BaseKey;
        Deque = new(pool.Options.Fence);
        Queue = queue ?? pool.SharedQueue ?? pool.Options.Deque switch
        {
            DequeKind.LockFree => Deque,
            DequeKind.ThiefLock => new ThiefLockDeque<NoSteps>(),
            DequeKind.OneLock => new OneLockDeque<NoSteps>(pool.Options.OwnerTakes, pool.Options.ThiefTakes),
        };
        TakesOwn = pool.Options.AtJoin != AtJoin.Wait || pool.SharedQueue is null;
        _victims = new(pool.Options, number);
        if (pool.Options.RecordingCapacity > 0)
            Recorder = new(pool, number, pool.Options.RecordingCapacity);
    }

    /// <summary>Its pool.</summary>
    public WorkerPool Pool { get; }

    /// <summary>Its number, from 0.</summary>
    public int Number { get; }

    /// <summary>Its number as the upper half of keys.</summary>
    public long BaseKey { get; }

    /// <summary>Whether forks and joins may take the short way.</summary>
    public bool IsFast { get; }

    /// <summary>Where its forks go, and where it looks first.</summary>
    public WorkQueue Queue { get; }

    /// <summary>Its notes; null when nothing is recorded.</summary>
    public Recorder? Recorder { get; }

    /// <summary>The run whose task it runs; null between runs.</summary>
    public PoolRun? CurrentRun { get; private set; }

    /// <summary>Lets go of the signal; the thread has ended.</summary>
    public void Dispose() => _signal.Dispose();

    /// <summary>Number of open children, without the worker's number.</summary>
    private int Depth => unchecked((int)(Key & uint.MaxValue));

    /// <summary>A frame of a type at the current depth; made when there is none.</summary>
    private Frame<TTask, TResult> FrameHere<TTask, TResult>()
        where TTask : IForkTask<TResult>
    {
        int type = FrameType<TTask, TResult>.Index;
        if (type >= _allStores.Length)
        {
            int old = _allStores.Length;
            Array.Resize(ref _allStores, Math.Max(type + 1, old * 2));

            // Any array of length 0 will do: the fast path reads nothing but the length of such a one.
            Array.Fill(_allStores, Array.Empty<Frame>(), old, _allStores.Length - old);
        }

        int depth = Depth;
        if (depth >= DepthMax)
            throw new InsufficientExecutionStackException(
                $"A worker has {depth} children that wait to be joined; more are not possible.");
        var frames = Unsafe.As<Frame<TTask, TResult>[]>(_allStores[type]);
        if (depth >= frames.Length)
        {
            Recorder?.Look();
            var grown = new Frame<TTask, TResult>[Math.Max(16, Math.Max(depth + 1, frames.Length * 2))];
            Array.Copy((Frame[])_allStores[type], grown, frames.Length);
            Pool.AddFrames<TTask, TResult>(this, grown, frames.Length);
            _allStores[type] = grown;
            frames = grown;
        }

        if (IsFast)
            Stores = _allStores;
        return frames[depth];
    }

    /// <summary>The youngest open child at a depth, of whatever type.</summary>
    private Frame OpenFrame(int depth)
    {
        // The latest fork at this depth has the largest serial number. Rare: after exceptions, and joins out of order.
        Frame? open = null;
        foreach (object store in _allStores)
        {
            var frames = (Frame[])store;
            if (depth < frames.Length && frames[depth] is var frame && (open is null || SerialOf(frame) > SerialOf(
                open)))
                open = frame;
        }

        return open!;
    }

    private static long SerialOf(Frame frame) => Volatile.Read(ref frame.Word) >> 16;
}
