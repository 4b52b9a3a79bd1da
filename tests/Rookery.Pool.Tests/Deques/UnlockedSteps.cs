using Microsoft.Coyote.Runtime;
using Rookery.Pool.Deques;

namespace Rookery.Pool.Tests.Deques;

/// <summary>
/// The mistake of a deque that forgot its lock, for the same scheduler as <see cref="ControlledSteps"/>.
/// </summary>
internal readonly struct UnlockedSteps : IDequeSteps
{
    /// <inheritdoc/>
    public static void At(DequeStep step) => SchedulingPoint.Interleave();

    /// <inheritdoc/>
    public static void Enter(Lock gate)
    {
    }

    /// <inheritdoc/>
    public static void Exit(Lock gate)
    {
    }
}
