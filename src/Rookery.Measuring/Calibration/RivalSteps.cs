using Rookery.Pool.Deques;

namespace Rookery.Measuring.Calibration;

/// <summary>Lets a rival steal just before the contest of a steal, so that the race is lost for certain.</summary>
internal readonly struct RivalSteps : IDequeSteps
{
    [ThreadStatic]
    private static LockFreeDeque<RivalSteps>? s_deque;

    /// <summary>The deque on which this thread is its own rival; null for none.</summary>
    public static void Set(LockFreeDeque<RivalSteps>? deque) => s_deque = deque;

    /// <inheritdoc/>
    public static void At(DequeStep step)
    {
        if (step != DequeStep.StealContest || s_deque is not { } deque)
            return;
        s_deque = null;
        deque.TrySteal(out _);
        s_deque = deque;
    }
}
