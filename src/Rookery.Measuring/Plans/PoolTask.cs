using Rookery.Pool;
using Rookery.Pool.Recording;
using Rookery.Pool.Workers;
using Rookery.Programs;

namespace Rookery.Measuring.Plans;

/// <summary>A task of a plan on a worker of the pool.</summary>
internal readonly struct PoolTask(PlanRun run, int number) : IForkTask<Nothing>, INumberedTask, IPoolCode
{
    /// <inheritdoc/>
    public int Number => number;

    /// <inheritdoc/>
    public int Count => run.Plan.Count;

    /// <inheritdoc/>
    public Nothing Run(Worker worker)
    {
        Plan plan = run.Plan;
        Recorder? recorder = worker.Core.Recorder;
        var children = new OpenChildren(OpenChildren.Here());
        for (int at = plan.Starts[number]; ; at++)
        {
            ref readonly PlanStep step = ref plan.Steps[at];
            if (recorder is not null)
                recorder.Line = step.Line;
            switch (step.Kind)
            {
                case ActionKind.Work:
                    recorder?.Look();
                    recorder?.Work(number);
                    run.Work(step.Value);
                    break;
                case ActionKind.Block:
                    recorder?.Look();
                    recorder?.Block(number);
                    run.Wait(step.Value);
                    recorder?.Unblock(number);
                    break;
                case ActionKind.Fork:
                    children.Push(worker.Fork<PoolTask, Nothing>(new(run, (int)step.Value)));
                    break;
                case ActionKind.Call:
                    recorder?.Call(number, (int)step.Value);
                    int before = worker.Core.SwapTask((int)step.Value);
                    new PoolTask(run, (int)step.Value).Run(worker);
                    worker.Core.SwapTask(before);
                    recorder?.End((int)step.Value, goesOn: true);
                    break;
                case ActionKind.Join:
                    while (children.TryPop(out Forked<PoolTask, Nothing> child))
                        worker.Join(child);
                    break;
                default:
                    return default;
            }
        }
    }
}
