using Microsoft.Coyote.Runtime;
using Rookery.Pool.Deques;

namespace Rookery.Pool.Tests.Deques;

/// <summary>Lets the testing library choose before each step which thread goes on.</summary>
/// <remarks>Outside of its runs the library's scheduling points do nothing.</remarks>
internal readonly struct ControlledSteps : IDequeSteps
{
    /// <inheritdoc/>
    public static void At(DequeStep step) => SchedulingPoint.Interleave();

    /// <inheritdoc/>
    public static void Enter(Lock gate)
    {
        // The library does not know this lock, and a thread that waits for it must not be the one that it lets go on.
        while (!gate.TryEnter())
            SchedulingPoint.Yield();
    }
}
