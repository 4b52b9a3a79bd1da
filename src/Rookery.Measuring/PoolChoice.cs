using Rookery.Notation;
using Rookery.Pool;
using Rookery.Simulation;

namespace Rookery.Measuring;

/// <summary>The pool that does what a scheduler of the simulator describes.</summary>
public static class PoolChoice
{
    /// <summary>The pool's options for a scheduler.</summary>
    /// <param name="scheduler">The scheduler.</param>
    /// <param name="workers">Workers.</param>
    /// <param name="seed">What the random choice of victims follows from.</param>
    /// <param name="isIdleGiven">Whether what idle workers do was asked for; the pool's own way otherwise.</param>
    /// <exception cref="InputException">Real threads cannot do that; the message says why.</exception>
    public static PoolOptions Of(Scheduler scheduler, int workers, long seed, bool isIdleGiven)
    {
        if (scheduler.Queues == Simulation.Queues.None)
            throw Refused("A thread for each task is not measured: use --on tasks for another runtime, or run to "
                + "simulate it.");
        if (scheduler.ForkRuns == ForkRuns.Child)
            throw Refused("What is left of a method cannot be queued in C#, so the parent always goes on "
                + "(--fork-runs parent).");
        if (scheduler.AtJoin == Simulation.AtJoin.Suspend)
            throw Refused("A method cannot leave its thread in the middle, so no worker can suspend it; use help, "
                + "leapfrog or wait.");
        if (workers > PoolOptions.WorkersMax)
            throw Refused($"A real pool has at most {PoolOptions.WorkersMax} workers.");
        bool needsLock = scheduler.OwnerTakes == Simulation.OwnerTakes.Oldest
            || scheduler.ThiefTakes == Simulation.ThiefTakes.Newest;
        bool isShared = scheduler.Queues == Simulation.Queues.Shared;
        var options = new PoolOptions
        {
            Workers = workers,
            Seed = seed,
            Queues = isShared ? Pool.Queues.Shared : Pool.Queues.PerWorker,
            Deque = needsLock && !isShared ? DequeKind.OneLock : DequeKind.LockFree,
            OwnerTakes = Enum.Parse<Pool.OwnerTakes>(scheduler.OwnerTakes.ToString()),
            ThiefTakes = Enum.Parse<Pool.ThiefTakes>(scheduler.ThiefTakes.ToString()),
            Victim = Enum.Parse<Pool.VictimChoice>(scheduler.Victim.ToString()),
            Amount = Enum.Parse<Pool.StealAmount>(scheduler.Amount.ToString()),
            AtJoin = Enum.Parse<Pool.AtJoin>(scheduler.AtJoin.ToString()),
            Wake = Enum.Parse<Pool.WakePolicy>(scheduler.Wake.ToString()),
        };
        return isIdleGiven
            ? options with
            {
                WhenIdle = Enum.Parse<Pool.WhenIdle>(scheduler.WhenIdle.ToString()),
                Patience = scheduler.Patience ?? options.Patience,
            }
            : options;
    }

    private static InputException Refused(string reason) => new(MeasuringErrors.Refused(reason));
}
