using System.Collections.Immutable;

namespace Rookery.Simulation;

/// <summary>How a run starved: at a time when every worker waited and none could run what they waited for.</summary>
/// <param name="Time">When the last worker came to wait.</param>
/// <param name="Waits">What each waiting worker waits for.</param>
public sealed record Starvation(long Time, ImmutableArray<StarvedWait> Waits)
{
    /// <summary>
    /// The waits that form a circle, each for the next and the last for the first; empty if there is none.
    /// </summary>
    /// <remarks>
    /// A worker waits for a task; that task is queued where only waiting workers could take it, or is itself waiting on
    /// another worker. A task in the queue of all waits for any worker: the circle is then that wait alone.
    /// </remarks>
    public ImmutableArray<StarvedWait> Cycle()
    {
        if (Waits.IsEmpty)
            return [];
        var path = new List<StarvedWait>();
        StarvedWait at = Waits[0];
        while (!path.Contains(at))
        {
            path.Add(at);
            StarvedWait? next = Waits.FirstOrDefault(w => w.Worker == at.HeldBy);
            if (next is null)
                return [at];
            at = next;
        }

        return [.. path.SkipWhile(w => w != at)];
    }
}
