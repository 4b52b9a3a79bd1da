using Rookery.Notation.Randomness;

namespace Rookery.Simulation.Engine;

/// <summary>All that the engine knows of one worker. Mutable; only the engine changes it.</summary>
internal sealed class WorkerState
{
    /// <summary>What happens at the worker's next time.</summary>
    public WorkerPhase Phase;

    /// <summary>The activation that it runs; -1 for none.</summary>
    public int Current = -1;

    /// <summary>The activation to start when the cost of getting it is paid.</summary>
    public int Item;

    /// <summary>
    /// The waiting activations under the current one, outermost first (at-join help, leapfrog, wait).
    /// </summary>
    public readonly Stack<int> Waiting = [];

    /// <summary>Its own deque; unused with a shared queue.</summary>
    public readonly TaskDeque Deque = new();

    /// <summary>Until when the end where thieves take is busy with an earlier take.</summary>
    public long EndBusyUntil;

    /// <summary>The victim it looks at.</summary>
    public int Victim;

    /// <summary>The number of the task that it saw, or -1.</summary>
    public int Seen;

    /// <summary>Looks in a row that brought nothing.</summary>
    public int Failed;

    /// <summary>Where the next victim is looked for; the meaning belongs to the policy.</summary>
    public int VictimCursor;

    /// <summary>The victim of its last successful steal, or -1.</summary>
    public int LastSuccess = -1;

    /// <summary>The worker that signalled it.</summary>
    public int WokenBy;

    /// <summary>From when it can be woken: falling asleep takes time.</summary>
    public long AsleepFrom;

    /// <summary>Since when it watches the shared queue.</summary>
    public long WatchFrom;

    /// <summary>Its stream of random draws, made at the first draw.</summary>
    public Xoshiro256StarStar Random;

    /// <summary>Whether <see cref="Random"/> has been made.</summary>
    public bool HasRandom;

    /// <summary>Whether it holds a core.</summary>
    public bool HasCore;

    /// <summary>When its time slice is over.</summary>
    public long SliceEnd;

    /// <summary>Units of the current work statement still to be done.</summary>
    public long WorkLeft;

    /// <summary>Line of the current statement.</summary>
    public int Line;

    /// <summary>Whether it lost its core in the middle of a work statement.</summary>
    public bool WasPreempted;
}
