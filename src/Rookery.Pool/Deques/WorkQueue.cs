namespace Rookery.Pool.Deques;

/// <summary>Holds the tasks of one worker, or of all.</summary>
/// <remarks>
/// A task is a number of at least 0. <see cref="Push"/> and <see cref="TryTake"/> are for the owner alone, except in
/// a queue that says otherwise; the rest is for every thread.
/// </remarks>
internal abstract class WorkQueue
{
    [ThreadStatic]
    private static int s_ticket;

    private int _tickets;

    /// <summary>
    /// Where the calling thread's last operation stands among all of its queue, for queues with a lock; 0 otherwise.
    /// It lets a
    /// recording put the operations in their true order.
    /// </summary>
    public static int LastTicket => s_ticket;

    /// <summary>How many tasks seem to be in it; out of date at once when others use it.</summary>
    public abstract int Count { get; }

    /// <summary>Puts a task in, at the bottom.</summary>
    public abstract void Push(int task);

    /// <summary>Takes a task at the owner's end.</summary>
    /// <param name="task">What was taken, or what a thief took meanwhile; -1 when nothing was there.</param>
    /// <returns><see cref="StealOutcome.LostRace"/> when a thief took the last one meanwhile.</returns>
    public abstract StealOutcome TryTake(out int task);

    /// <summary>Takes a task at the thieves' end.</summary>
    /// <param name="task">What was taken, or what was seen when the race was lost; -1 when nothing was there.</param>
    public abstract StealOutcome TrySteal(out int task);

    /// <summary>Draws the next ticket; with the lock held.</summary>
    protected void DrawTicketNeedsLock() => s_ticket = unchecked(++_tickets);
}
