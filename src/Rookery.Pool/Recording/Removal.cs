namespace Rookery.Pool.Recording;

/// <summary>
/// A task leaves the top of a deque, where thieves look: stolen, or taken by the owner as the last one.
/// </summary>
/// <param name="Place">Where in the order of all events.</param>
/// <param name="Task">Which task.</param>
internal readonly record struct Removal(int Place, int Task);
