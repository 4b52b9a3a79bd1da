using Rookery.Pool.Deques;

namespace Rookery.Pool.Tests.Deques;

/// <summary>Lets a <see cref="StepScheduler"/> choose before each step of the deque which thread goes on.</summary>
internal readonly struct ScheduledSteps : IDequeSteps
{
    [ThreadStatic]
    private static StepScheduler? s_scheduler;

    [ThreadStatic]
    private static int s_thread;

    /// <summary>Puts the calling thread under a scheduler.</summary>
    public static void Control(StepScheduler? scheduler, int thread) => (s_scheduler, s_thread) = (scheduler, thread);

    /// <inheritdoc/>
    public static void At(DequeStep step) => s_scheduler?.Pause(s_thread);
}
