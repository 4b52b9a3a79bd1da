using System.Runtime.CompilerServices;
using System.Runtime.ExceptionServices;

namespace Rookery.Pool.Workers;

/// <summary>A frame for one type of task: the task itself and its result lie in it.</summary>
internal sealed class Frame<TTask, TResult>(WorkerCore owner, int depth, int number) : Frame(owner, depth, number)
    where TTask : IForkTask<TResult>
{
    /// <summary>What is to be done; written by the owner before the push.</summary>
    public TTask Body = default!;

    /// <summary>What came of it; written by whoever ran it before it is finished.</summary>
    public TResult Result = default!;

    /// <inheritdoc/>
    public override void Execute(WorkerCore core)
    {
        long word = Word;
        TTask body = Body;
        long state = FrameState.Done;
        TaskPlace place = core.EnterTask(this);
        int thrown = core.Thrown;
        try
        {
            // A waiting worker runs tasks on top of waiting ones; a stack that ends is an error of the run, not of
            // the process.
            RuntimeHelpers.EnsureSufficientExecutionStack();
            core.CurrentRun!.ThrowIfStopped();
            Result = body.Run(new Worker(core));
            core.CheckNoneOpen(thrown);
        }
#pragma warning disable CA1031 // Whatever a task throws belongs to its join.
        catch (Exception failure)
#pragma warning restore CA1031
        {
            core.Abandon();
            Failure = ExceptionDispatchInfo.Capture(failure);
            state = FrameState.Failed;
        }

        core.LeaveTask(this, place);
        Finish(word, state);
        core.SayFinished(this);
    }
}
