using Rookery.Traces;

namespace Rookery.Lab.Predict;

/// <summary>What somebody thinks comes next; null for what was not said.</summary>
/// <param name="Worker">Who acts.</param>
/// <param name="Kind">What it does.</param>
/// <param name="Victim">At whose deque.</param>
/// <param name="End">At which end.</param>
/// <param name="Task">Which task.</param>
internal sealed record Answer(
    int? Worker = null, EventKind? Kind = null, int? Victim = null, QueueEnd? End = null, int? Task = null)
{
    /// <summary>Nothing said yet.</summary>
    public static Answer Nothing { get; } = new();
}
