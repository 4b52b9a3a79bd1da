namespace Rookery.Simulation;

/// <summary>Which task an owner takes from its own deque, or a worker from the shared queue.</summary>
/// <remarks>The first value is the default.</remarks>
public enum OwnerTakes : byte
{
    /// <summary><c>newest</c>: The task queued last: last in, first out.</summary>
    [OptionWord("newest")]
    Newest,

    /// <summary><c>oldest</c>: The task queued first: first in, first out.</summary>
    [OptionWord("oldest")]
    Oldest,
}
