using System.Runtime.CompilerServices;
using Rookery.Programs;

namespace Rookery.Measuring.Plans;

/// <summary>Reads a plan as the tasks of the pool do, without pool and work: what the reading alone takes.</summary>
/// <remarks>Children are read at the join by who forked them, as a pool of one worker does. For one thread.</remarks>
internal sealed class PlanWalk(PlanRun run)
{
    private readonly Stack<int> _children = new();

    /// <summary>Reads the whole plan; nothing more when its tasks are nested too deep for this thread.</summary>
    public void Read() => Read(0);

    private void Read(int task)
    {
        if (!RuntimeHelpers.TryEnsureSufficientExecutionStack())
            return;
        Plan plan = run.Plan;
        int floor = _children.Count;
        for (int at = plan.Starts[task]; ; at++)
        {
            ref readonly PlanStep step = ref plan.Steps[at];
            switch (step.Kind)
            {
                case ActionKind.Work:
                    run.Work(step.Value);
                    break;
                case ActionKind.Block:
                    run.Wait(step.Value);
                    break;
                case ActionKind.Fork:
                    _children.Push((int)step.Value);
                    break;
                case ActionKind.Call:
                    Read((int)step.Value);
                    break;
                case ActionKind.Join:
                    while (_children.Count > floor)
                        Read(_children.Pop());
                    break;
                default:
                    return;
            }
        }
    }
}
