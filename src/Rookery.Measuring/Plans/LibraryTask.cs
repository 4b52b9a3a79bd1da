using Rookery.Measuring.Tasks;
using Rookery.Programs;

namespace Rookery.Measuring.Plans;

/// <summary>A task of a plan as a task of the runtime's own library.</summary>
internal sealed class LibraryTask(PlanRun run, int number, int[]? ids)
{
    /// <summary>Told of joins, when the run is recorded.</summary>
    public TaskListener? Listener { get; init; }

    /// <summary>Does it.</summary>
    public void Run()
    {
        Plan plan = run.Plan;
        Stack<Task>? children = null;
        for (int at = plan.Starts[number]; ; at++)
        {
            PlanStep step = plan.Steps[at];
            switch (step.Kind)
            {
                case ActionKind.Work:
                    run.Work(step.Value);
                    break;
                case ActionKind.Block:
                    run.Wait(step.Value);
                    break;
                case ActionKind.Fork:
                    (children ??= new()).Push(Start((int)step.Value));
                    break;
                case ActionKind.Call:
                    new LibraryTask(run, (int)step.Value, ids) { Listener = Listener }.Run();
                    break;
                case ActionKind.Join:
                    // The library runs a child here and now when nobody has begun it, as the pool does.
                    while (children is not null && children.TryPop(out Task? child))
                    {
                        child.Wait();
                        Listener?.Joined(child.Id);
                    }

                    break;
                default:
                    return;
            }
        }
    }

    /// <summary>Queues a task of the plan.</summary>
    public Task Start(int task)
    {
        var next = new LibraryTask(run, task, ids) { Listener = Listener };
        var made = new Task(static it => ((LibraryTask)it!).Run(), next);
        if (ids is not null)
            Volatile.Write(ref ids[task], made.Id);
        made.Start(TaskScheduler.Default);
        return made;
    }
}
