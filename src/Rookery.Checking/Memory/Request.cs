using Rookery.Checking.Compiling;

namespace Rookery.Checking.Memory;

/// <summary>A shared access with its numbers, about to be made.</summary>
/// <param name="access">What the code says.</param>
/// <param name="place">Which place; -1 for a fence.</param>
/// <param name="first">What is written, expected or added.</param>
/// <param name="second">The new value of a compare-and-swap.</param>
internal readonly struct Request(Access access, int place, long first, long second)
{
    public readonly Access Access = access;
    public readonly int Place = place;
    public readonly long First = first;
    public readonly long Second = second;

    /// <summary>What an update writes over an old value, and whether it writes at all.</summary>
    public bool TryUpdate(long old, out long written)
    {
        switch (Access.Kind)
        {
            case Naming.AccessKind.CompareAndSwap:
                written = Second;
                return old == First;
            case Naming.AccessKind.Add:
                written = unchecked(old + First);
                return true;
            default:
                written = First;
                return true;
        }
    }

    /// <summary>What an update answers.</summary>
    public long Answer(long old, bool isWritten) =>
        Access.Kind == Naming.AccessKind.CompareAndSwap ? isWritten ? 1 : 0 : old;
}
