using Rookery.Pool.Deques;

namespace Rookery.Pool.Tests.Deques;

/// <summary>Writes down the steps that the calling thread's operations take.</summary>
internal readonly struct RecordedSteps : IDequeSteps
{
    [ThreadStatic]
    private static List<DequeStep>? s_steps;

    /// <summary>The steps of an action.</summary>
    public static DequeStep[] Of(Action action)
    {
        s_steps = [];
        action();
        DequeStep[] steps = [.. s_steps];
        s_steps = null;
        return steps;
    }

    /// <inheritdoc/>
    public static void At(DequeStep step) => s_steps?.Add(step);
}
