namespace Rookery.Checking.Progress;

/// <summary>A step between two states.</summary>
/// <param name="To">The state that it leads to.</param>
/// <param name="Thread">Which thread moves; -1 when memory moves by itself.</param>
internal readonly record struct GraphEdge(int To, int Thread);
