namespace Rookery.Pool.Workers;

/// <content>How a worker rests between looks.</content>
internal sealed partial class WorkerCore
{
    private const int PauseMax = 64;

    private readonly AutoResetEvent _signal = new(false);
    private Frame? _sleepsFor;

    /// <summary>
    /// The child whose end is to wake this worker; null for none. Written by the worker, read by all.
    /// </summary>
    public Frame? SleepsFor => Volatile.Read(ref _sleepsFor);

    /// <summary>
    /// Lets a sleeping worker go on; called once for each time that it was taken off the list of sleepers.
    /// </summary>
    public void Signal()
    {
        if (Pool.Seam is null)
            _signal.Set();
        else
            Pool.Seam.Set(_signal);
    }

    /// <summary>A worker has a task that it queued: wakes a sleeper; or the run is to stop: ends the task.</summary>
    public void Attend()
    {
        if (Volatile.Read(ref Attention) >= StopRequest)
            CurrentRun!.ThrowIfStopped();
        if ((Volatile.Read(ref Attention) & (StopRequest - 1)) != 0)
            Pool.WakeForWork(this);
    }

    /// <summary>Tells the worker that forked a child, if it sleeps, that the child is finished.</summary>
    public void SayFinished(Frame frame)
    {
        if (frame.Owner == this)
            return;

        // order: full; the frame's state is stored before the owner's wish is read. pairs with: the barrier in Sleep.
        // else: the
        // owner sees an unfinished child, we see nobody asleep, and it sleeps for ever. A steal is rare: the fence
        // costs little.
        Interlocked.MemoryBarrier();
        Pool.Seam?.Step();
        if (frame.Owner.SleepsFor == frame)
            Pool.Wake(frame.Owner, this);
    }

    /// <summary>Does what the option says after a look that found nothing.</summary>
    private void Rest(Frame? awaited)
    {
        _misses = Math.Min(_misses, int.MaxValue - 1) + 1;
        bool leapfrogs = awaited is not null && Pool.Options.AtJoin == AtJoin.Leapfrog;
        switch (Pool.Options.WhenIdle)
        {
            case WhenIdle.Spin:
                Thread.SpinWait(1);
                break;
            case WhenIdle.BackOff:
                Pause();
                break;
            case WhenIdle.Sleep when _misses < Pool.Options.Patience || leapfrogs:
                Pause();
                break;
            default:
                Sleep(awaited);
                _misses = 0;
                break;
        }
    }

    private void Pause()
    {
        // Whoever can do nothing for long leaves the processor to those who can.
        if (_misses % PauseMax == 0)
            Thread.Yield();
        else
            Thread.SpinWait(Math.Min(_misses, PauseMax / 4));
    }

    private void Sleep(Frame? awaited)
    {
        Pool.Seam?.Step();
        Pool.AddSleeper(this, awaited is null);
        Pool.Seam?.Step();
        Volatile.Write(ref _sleepsFor, awaited);

        // order: full, on every processor of the process. What we announced above is seen by whoever queues a task
        // from now on,
        // and what was queued before is seen by our last look below. pairs with: the load of Attention in
        // Worker.Fork, which has
        // no fence, and the fence in SayFinished. else: a task is queued, nobody is woken for it: the lost wake-up.
        Interlocked.MemoryBarrierProcessWide();
        Pool.Seam?.Step();
        bool hasReason = Pool.Seam is not { LeavesOutLastLook: true }
            && (Pool.IsClosed || Pool.HasWork() || (awaited is null ? Pool.HasRuns : awaited.IsFinished));
        Pool.Seam?.Step();
        if (!hasReason || !Pool.TryRemoveSleeper(this))
            WaitForSignal();

        Volatile.Write(ref _sleepsFor, null);
    }

    /// <summary>Who woke this worker last, -1 for somebody outside; written by it before the signal.</summary>
    public int WokenBy { get; set; } = -1;

    /// <summary>Blocks until a child is finished, under at-join wait.</summary>
    private void Block(Frame frame)
    {
        Volatile.Write(ref _sleepsFor, frame);
        Pool.Seam?.Step();
        Pool.AddBlocked(this);

        // order: full, as in Sleep. pairs with: the fence in SayFinished. else: the same.
        Interlocked.MemoryBarrierProcessWide();
        Pool.Seam?.Step();
        if (!frame.IsFinished || !Pool.TryRemoveSleeper(this))
            WaitForSignal();
        Volatile.Write(ref _sleepsFor, null);
    }

    private void WaitForSignal()
    {
        Recorder?.Sleep();
        if (Pool.Seam is null)
            _signal.WaitOne();
        else
            Pool.Seam.Wait(_signal);
        Recorder?.Wake(WokenBy);
    }
}
