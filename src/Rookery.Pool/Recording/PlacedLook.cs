namespace Rookery.Pool.Recording;

/// <summary>An event of a look, with its place in the order of all.</summary>
/// <param name="Place">After which event of the order.</param>
/// <param name="Time">When, in the clock's units.</param>
/// <param name="Worker">Who looked.</param>
/// <param name="Kind">Probe, empty or lost race.</param>
/// <param name="Task">What was seen; -1 for nothing.</param>
/// <param name="Victim">At whom; -1 for the queue of all.</param>
internal readonly record struct PlacedLook(
    int Place, long Time, int Worker, RecordedKind Kind, int Task, int Victim);
