using System.Collections.Immutable;
using Rookery.Traces.Replaying;

namespace Rookery.Traces.Narration;

/// <summary>What a text alternative says of one worker at one moment.</summary>
/// <param name="Worker">Its number.</param>
/// <param name="HasStarted">Whether it has had an event.</param>
/// <param name="LastEvent">Kind of its last event.</param>
/// <param name="Stretch">What it does.</param>
/// <param name="Task">Its current task; "" for none.</param>
/// <param name="Line">Line of that task; 0 when unknown.</param>
/// <param name="Below">Tasks that wait below the current one on this worker, innermost first; not more than some.</param>
/// <param name="BelowCount">How many there are.</param>
/// <param name="Deque">Its deque from top to bottom; not more than some.</param>
/// <param name="DequeCount">How many tasks are in it.</param>
/// <param name="HasDeque">Whether workers have deques of their own in this run.</param>
internal sealed record WorkerFacts(
    int Worker,
    bool HasStarted,
    EventKind LastEvent,
    Stretch Stretch,
    string Task,
    int Line,
    ImmutableArray<string> Below,
    int BelowCount,
    ImmutableArray<string> Deque,
    int DequeCount,
    bool HasDeque);
