namespace Rookery.Checking.Exploring;

/// <summary>Work that comes next: parts that do not depend on one another, perhaps none.</summary>
/// <remarks>
/// A search is written as a sequence of these, and who walks through it does the parts: all at the same time, or one by
/// one with a rest in between. Nothing of the result depends on which.
/// </remarks>
/// <param name="Count">How many parts.</param>
/// <param name="Part">Does one of them, from 0.</param>
internal readonly record struct Portion(int Count, Action<int> Part)
{
    /// <summary>Nothing left to do of what was just done: a place to rest.</summary>
    public static Portion Rest { get; } = new(0, static _ => { });
}
