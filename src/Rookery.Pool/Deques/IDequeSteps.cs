namespace Rookery.Pool.Deques;

/// <summary>Told before each step of the lock-free deque, so that tests can order threads step by step.</summary>
/// <remarks>A struct type argument: with <see cref="NoSteps"/> the compiler leaves nothing of it.</remarks>
internal interface IDequeSteps
{
    /// <summary>The calling thread is about to do this step.</summary>
    static abstract void At(DequeStep step);
}
