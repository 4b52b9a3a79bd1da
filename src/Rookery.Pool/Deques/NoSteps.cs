using System.Runtime.CompilerServices;

namespace Rookery.Pool.Deques;

/// <summary>Nobody watches: the deque as it runs.</summary>
internal readonly struct NoSteps : IDequeSteps
{
    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void At(DequeStep step)
    {
    }
}
