namespace Rookery.Simulation;

/// <summary>Who is woken when a task is queued.</summary>
/// <remarks>The first value is the default.</remarks>
public enum WakePolicy : byte
{
    /// <summary><c>one</c>: The worker that has slept longest.</summary>
    [OptionWord("one")]
    One,

    /// <summary><c>all</c>: Every sleeper.</summary>
    [OptionWord("all")]
    All,
}
