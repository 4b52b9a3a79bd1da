using Rookery.Pool.Deques;

namespace Rookery.Pool.Workers;

/// <content>Where work comes from: calls from outside, the own queue, other workers.</content>
internal sealed partial class WorkerCore
{
    private readonly VictimSelector _victims;
    private int _misses;

    /// <summary>The life of a worker.</summary>
    public void Live()
    {
        while (!Pool.IsClosed)
        {
            if (Pool.TakeRun() is { } run)
            {
                _misses = 0;
                run.Execute(this);
            }
            else if (TryRunOne(null))
                _misses = 0;
            else
                Rest(null);
        }
    }

    /// <summary>Waits until a child is finished, and does meanwhile what the option says.</summary>
    /// <param name="frame">The child.</param>
    /// <param name="hasLost">Whether this worker has just lost a race for it.</param>
    private void WaitFor(Frame frame, bool hasLost)
    {
        bool isFinished = frame.IsFinished;
        if (!isFinished)
            Recorder?.Wait(_task, frame);
        if (hasLost)
            Recorder?.LostRace(frame.Task, Number);
        if (isFinished)
            return;
        while (!frame.IsFinished)
        {
            WaitOnce(frame);
            if (Pool.Options.AtJoin == AtJoin.Wait && !frame.IsFinished)
                CurrentRun!.ThrowIfStopped();
        }

        // A sleeper that was woken for a task, and finds its own child done, passes the word on.
        if (Volatile.Read(ref Attention) != 0 && Pool.HasWork())
            Pool.WakeForWork(this);
    }

    private void WaitOnce(Frame frame)
    {
        if (Pool.Options.AtJoin == AtJoin.Wait && !CurrentRun!.IsStopped)
        {
            Recorder?.Look();
            Block(frame);
        }
        else if (TryRunOne(frame))
            _misses = 0;
        else
            Rest(frame);
    }

    /// <summary>Takes or steals one task and runs it; one look.</summary>
    private bool TryRunOne(Frame? awaited)
    {
        StealOutcome outcome = Queue.TryTake(out int task);
        if (outcome == StealOutcome.Taken)
        {
            Frame own = Pool.FrameOf(task);
            Recorder?.Take(own.Task);
            Execute(own);
            return true;
        }

        Recorder?.Look();
        if (outcome == StealOutcome.LostRace)
            Recorder?.LostRace(Pool.FrameOf(task).Task, Number);
        if (Pool.SharedQueue is not null)
        {
            Recorder?.Empty(-1);
            return false;
        }

        int victim = Pool.Options.AtJoin == AtJoin.Leapfrog && awaited is not null
            ? Volatile.Read(ref awaited.Runner)
            : _victims.Next(Pool.Workers);
        return victim >= 0 && victim != Number && TrySteal(victim);
    }

    private bool TrySteal(int victim)
    {
        WorkQueue queue = Pool.Workers[victim].Queue;
        StealOutcome outcome = queue.TrySteal(out int task);
        _victims.Learn(victim, outcome == StealOutcome.Taken);
        switch (outcome)
        {
            case StealOutcome.Empty:
                Recorder?.Empty(victim);
                return false;
            case StealOutcome.LostRace:
                Recorder?.LostRace(-1, victim);
                return false;
            default:
                break;
        }

        Frame stolen = Pool.FrameOf(task);
        Recorder?.Steal(stolen.Task, victim);
        if (Pool.Options.Amount == StealAmount.Half)
            StealMore(queue);
        Recorder?.Begin(stolen.Task);
        Execute(stolen);
        return true;
    }

    /// <summary>
    /// Half of what is there, rounded up, the first one included; one after the other, since they are contested.
    /// </summary>
    private void StealMore(WorkQueue queue)
    {
        for (int left = queue.Count / 2; left > 0 && queue.TrySteal(out int task) == StealOutcome.Taken; left--)
            Queue.Push(task);
    }

    private void Execute(Frame frame)
    {
        Volatile.Write(ref frame.Runner, Number);
        frame.Execute(this);
    }
}
