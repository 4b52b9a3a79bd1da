using System.Runtime.CompilerServices;
using Rookery.Pool.Deques;

namespace Rookery.Pool.Workers;

/// <content>Forks and joins off the fast path, and what happens to children when a task ends.</content>
internal sealed partial class WorkerCore
{
    private int _task = -1;
    private int _floor;
    private int _thrown;

    /// <summary>Exceptions thrown on this worker so far.</summary>
    public int Thrown => _thrown;

    /// <summary>A fork when the frame has to be made, the deque is another one, or the run is recorded.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public Forked<TTask, TResult> ForkSlow<TTask, TResult>(TTask task)
        where TTask : IForkTask<TResult>
    {
        Frame<TTask, TResult> frame = FrameHere<TTask, TResult>();
        long word = NextWord;
        unchecked
        {
            NextWord = word + WordStep;
            Key++;
        }

        frame.Body = task;
        frame.Word = IsFast ? word : word | FrameState.OffFastPath;
        frame.Runner = -1;
        if (Recorder is { } recorder)
            frame.Task = recorder.Fork(_task, in task, task is IPoolCode);
        Queue.Push(frame.Number);
        Recorder?.Queued();

        // order: as in Worker.Fork. The other deques have a full fence in their locks.
        if (Volatile.Read(ref Attention) != 0)
        {
            Attend();
            Recorder?.Look();
        }

        return new(frame, word);
    }

    /// <summary>A join when the child was stolen, is not the youngest, or the pool has another deque.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public TResult JoinSlow<TTask, TResult>(Frame<TTask, TResult>? frame, long forkedWord, int taken)
        where TTask : IForkTask<TResult>
    {
        // Not what was to be joined: back to where it was. Its owner may do that; nobody can have seen it gone for
        // good.
        if (taken >= 0)
            Queue.Push(taken);

        // There is no gap above a youngest child that is not joined, and looking for one is dear.
        if (frame is null || frame.Key + 1 != Key || IsJoined(frame))
            CloseGaps();
        if (frame is null)
            throw PoolErrors.JoinedNothing();
        if (frame.Owner != this)
            throw PoolErrors.WrongWorker(frame.Owner.Number, Number);
        long word = Volatile.Read(ref frame.Word);
        if (frame.Depth < _floor || frame.Depth >= Depth || (word & ~(
            FrameState.Mask | FrameState.OffFastPath)) != forkedWord
            || (word & FrameState.Mask) == FrameState.Joined)
            throw PoolErrors.JoinedTwice();

        StealOutcome outcome = StealOutcome.Empty;
        int newest = -1;
        if (frame.Depth == Depth - 1 && !frame.IsFinished && TakesOwn)
            outcome = Queue.TryTake(out newest);
        if (outcome == StealOutcome.Taken)
        {
            if (newest == frame.Number)
                return RunHere(frame);

            // Possible with a deque that gives its owner the oldest, or one queue for all.
            Frame own = Pool.FrameOf(newest);
            Recorder?.Wait(_task, frame);
            Recorder?.Take(own.Task);
            Execute(own);
        }

        WaitFor(frame, outcome == StealOutcome.LostRace);
        return Conclude(frame);
    }

    /// <summary>Enters a forked child, with its run.</summary>
    /// <exception cref="InsufficientExecutionStackException">The worker's stack is nearly used up.</exception>
    public TaskPlace EnterTask(Frame frame)
    {
        Recorder?.Look();
        var place = new TaskPlace(_floor, NextWord & (WordStep - 1), _task, Recorder?.Line ?? 0);
        SetSlot(frame.Word & (WordStep - 1) & ~(FrameState.Mask | FrameState.OffFastPath));
        _floor = Depth;
        _task = frame.Task;
        return place;
    }

    /// <summary>Leaves a forked child.</summary>
    public void LeaveTask(Frame frame, in TaskPlace place)
    {
        if (Recorder is { } recorder)
        {
            recorder.End(frame.Task, frame.Owner == this);
            recorder.Line = place.Line;
        }

        (_floor, _task) = (place.Floor, place.Task);
        SetSlot(place.Slot);
    }

    /// <summary>Enters a run from outside.</summary>
    public void EnterRun(PoolRun run)
    {
        SetSlot((long)run.Slot << SlotShift);
        _floor = Depth;
        if (Recorder is { } recorder)
            _task = recorder.BeginRoot(run);
    }

    /// <summary>Leaves a run from outside.</summary>
    public void LeaveRun()
    {
        Recorder?.End(_task);
        _task = -1;
        CurrentRun = null;
    }

    /// <summary>Says which task the notes speak of; for tasks that programs number themselves.</summary>
    /// <returns>Which it was before.</returns>
    public int SwapTask(int task)
    {
        int before = _task;
        _task = task;
        return before;
    }

    /// <summary>Every child of the current task has been joined, or it is an error.</summary>
    /// <param name="thrownBefore"><see cref="Thrown"/> when the task began.</param>
    /// <exception cref="PoolMisuseException">Some have not.</exception>
    public void CheckNoneOpen(int thrownBefore)
    {
        if (Depth == _floor)
            return;
        CloseGaps();
        if (Depth == _floor)
            return;

        // Children of calls that an exception ended, which the task then caught: nobody can join them any more.
        if (_thrown != thrownBefore)
            Abandon();
        else
            throw PoolErrors.NeverJoined(Depth - _floor);
    }

    /// <summary>Counts the exceptions of this worker, whoever throws them.</summary>
    public void CountThrown() => _thrown++;

    /// <summary>
    /// Ends the open children of a task that an exception ended: drops the queued ones, waits for the rest.
    /// </summary>
    public void Abandon()
    {
        while (Depth > _floor)
        {
            Frame frame = OpenFrame(Depth - 1);
            while ((Volatile.Read(ref frame.Word) & FrameState.Mask) == FrameState.Open)
            {
                if (Queue.TryTake(out int taken) != StealOutcome.Taken)
                    WaitOnce(frame);
                else if (Pool.FrameOf(taken) is var own && own.Owner == this && own.Depth >= _floor)
                    Drop(own);
                else
                    Execute(own);
            }

            frame.Failure = null;
            unchecked
            {
                Key--;
            }
        }
    }

    /// <summary>Whether a waiting worker may run tasks of its own queue.</summary>
    private bool TakesOwn { get; }

    private static void Drop(Frame frame) => Volatile.Write(ref frame.Word, frame.Word | FrameState.Failed);

    private void SetSlot(long slot)
    {
        unchecked
        {
            NextWord = (NextWord & ~(WordStep - 1)) | slot;
        }

        CurrentRun = Pool.RunAt((int)(slot >> SlotShift));
    }

    /// <summary>Runs the youngest child, which nobody else can have any more, as a call.</summary>
    private TResult RunHere<TTask, TResult>(Frame<TTask, TResult> frame)
        where TTask : IForkTask<TResult>
    {
        TTask body = frame.Body;
        unchecked
        {
            Key--;
        }

        if (Recorder is not { } recorder)
            return body.Run(new Worker(this));
        (int before, int task, int line) = (_task, frame.Task, recorder.Line);
        recorder.TakeAwaited(before, task, body is IPoolCode);
        _task = task;

        // An exception may be caught by a program's code, after any time.
        bool goesOn = false;
        try
        {
            TResult result = body.Run(new Worker(this));
            goesOn = body is IPoolCode;
            return result;
        }
        finally
        {
            _task = before;
            recorder.EndAndPass(task, before, line, goesOn);
        }
    }

    /// <summary>Gives the result of a finished child, or throws what ended it.</summary>
    private TResult Conclude<TTask, TResult>(Frame<TTask, TResult> frame)
        where TTask : IForkTask<TResult>
    {
        TResult result = frame.Result;
        var failure = frame.Failure;
        frame.Result = default!;
        frame.Failure = null;
        frame.Word |= FrameState.Joined;
        CloseGaps();
        Recorder?.Pass(_task);
        failure?.Throw();
        return result;
    }

    /// <summary>Children joined out of order leave gaps in the stack; they close from the top.</summary>
    private void CloseGaps()
    {
        while (Depth > _floor && IsJoined(OpenFrame(Depth - 1)))
        {
            unchecked
            {
                Key--;
            }
        }
    }

    private static bool IsJoined(Frame frame) => (frame.Word & FrameState.Mask) == FrameState.Joined;
}
