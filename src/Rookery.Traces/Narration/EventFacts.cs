using Rookery.Traces.Replaying;

namespace Rookery.Traces.Narration;

/// <summary>All that a sentence about one event may need: computed from the trace, nothing in words.</summary>
/// <remarks>
/// A language says which of it matters and how. Names are labels of tasks, "" for none; lengths and times are in the
/// trace's unit, null where the trace does not tell. Queue sizes are those of the queue that the event is about.
/// </remarks>
internal sealed record EventFacts
{
    public required EventKind Kind { get; init; }

    public required int Worker { get; init; }

    public required RunOptions Options { get; init; }

    /// <summary>Unit of time: <c>units</c> or <c>ns</c>.</summary>
    public required string TimeUnit { get; init; }

    /// <summary>When it happened.</summary>
    public long Time { get; init; }

    /// <summary>Line of the program; 0 for none.</summary>
    public int Line { get; init; }

    /// <summary>The task that acts or is moved.</summary>
    public string Task { get; init; } = "";

    /// <summary>The child, parent or caller, as the kind says.</summary>
    public string OtherTask { get; init; } = "";

    /// <summary>The victim, waker, forker or taker, as the kind says; -1 for none.</summary>
    public int OtherWorker { get; init; } = -1;

    /// <summary>In whose deque a race was lost (<see cref="EventKind.LostRace"/>); -1 for none.</summary>
    public int Victim { get; init; } = -1;

    /// <summary>The task that waits on this worker below what it does, or for which it waits; "" for none.</summary>
    public string WaitingTask { get; init; } = "";

    /// <summary>Number of workers in the run.</summary>
    public int WorkerCount { get; init; }

    /// <summary>How long the stretch lasts that this event opens.</summary>
    public long? Length { get; init; }

    /// <summary>How long the task waited in its queue or at its join, was blocked, or the worker slept.</summary>
    public long? Waited { get; init; }

    /// <summary>How long ago the cause was: a fork that wakes, a take that came first.</summary>
    public long? Ago { get; init; }

    /// <summary>Kind of the worker's event before, and of the one after; null for none.</summary>
    public EventKind? Former { get; init; }

    /// <inheritdoc cref="Former"/>
    public EventKind? Following { get; init; }

    /// <summary>Whether it is the worker's last event in the trace.</summary>
    public bool IsLast => Following is null;

    /// <summary>Whether the task has begun before the event, so that what is moved is its continuation.</summary>
    public bool HasBegun { get; init; }

    /// <summary>Callers that move with the task.</summary>
    public int Callers { get; init; }

    /// <summary>Whether the task was called, not forked.</summary>
    public bool IsCalled { get; init; }

    /// <summary>Whether the task is the start of the program.</summary>
    public bool IsRoot { get; init; }

    /// <summary>How it came to its worker (<see cref="EventKind.Begin"/>).</summary>
    public Arrival Arrival { get; init; }

    /// <summary>Tasks in the queue before the event, or before the first of several that are one steal.</summary>
    public int Before { get; init; }

    /// <summary>Tasks in the queue after the event.</summary>
    public int After { get; init; }

    /// <summary>Whether the task stood at the bottom (the newest) or the top (the oldest) of the queue.</summary>
    public bool WasNewest { get; init; }

    /// <inheritdoc cref="WasNewest"/>
    public bool WasOldest { get; init; }

    /// <summary>Whether this worker queued the task itself.</summary>
    public bool IsOwnFork { get; init; }

    /// <summary>Why that victim.</summary>
    public VictimReason Reason { get; init; }

    /// <summary>Looks that failed in a row, this one included where it failed.</summary>
    public int FailedLooks { get; init; }

    /// <summary>Which of several steals that are one this is, from 0, and how many there are.</summary>
    public int StealIndex { get; init; }

    /// <inheritdoc cref="StealIndex"/>
    public int StealCount { get; init; } = 1;

    /// <summary>Work that goes with what is moved, and all the work of the run.</summary>
    public long Work { get; init; }

    /// <inheritdoc cref="Work"/>
    public long AllWork { get; init; }

    /// <summary>Children of the task (of the parent at an end) that have not ended, after the event.</summary>
    public int Unfinished { get; init; }

    /// <summary>Children that the task has created so far.</summary>
    public int Created { get; init; }

    /// <summary>Whether the parent waits at a join (<see cref="EventKind.End"/>), or the task did (<see cref="EventKind.JoinPass"/>).</summary>
    public bool WasWaiting { get; init; }

    /// <summary>Whether the awaited child has begun (<see cref="EventKind.JoinWait"/>).</summary>
    public bool AwaitedHasBegun { get; init; }

    /// <summary>Failed looks before sleeping, where the trace says it; else 0.</summary>
    public int Patience { get; init; }

    /// <summary>Why it was woken.</summary>
    public WakeReason WakeReason { get; init; }

    /// <summary>Whether the run starved.</summary>
    public bool Starved { get; init; }
}
