using System.Runtime.ExceptionServices;

namespace Rookery.Pool.Workers;

/// <summary>A run with its first task and its result.</summary>
internal sealed class PoolRun<TTask, TResult>(
    WorkerPool pool, TTask task, TimeSpan? timeLimit, CancellationToken cancellation)
    : PoolRun(pool, timeLimit, cancellation)
    where TTask : IForkTask<TResult>
{
    /// <summary>What came of it.</summary>
    public TResult Result { get; private set; } = default!;

    /// <inheritdoc/>
    public override object LabelSource => TaskLabel.SourceOf(in task);

    /// <inheritdoc/>
    public override void Execute(WorkerCore core)
    {
        core.EnterRun(this);
        int thrown = core.Thrown;
        try
        {
            ThrowIfStopped();
            Result = task.Run(new Worker(core));
            core.CheckNoneOpen(thrown);
        }
#pragma warning disable CA1031 // Whatever a task throws belongs to the caller.
        catch (Exception failure)
#pragma warning restore CA1031
        {
            core.Abandon();
            Failure = ExceptionDispatchInfo.Capture(failure);
        }

        core.LeaveRun();
        SayFinished();
    }
}
