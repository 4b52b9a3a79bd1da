namespace Rookery.Pool.Deques;

/// <summary>Told before each step of a deque, so that tests can order threads step by step.</summary>
/// <remarks>A struct type argument: with <see cref="NoSteps"/> the compiler leaves nothing of it.</remarks>
internal interface IDequeSteps
{
    /// <summary>The calling thread is about to do this step.</summary>
    static abstract void At(DequeStep step);

    /// <summary>Takes the lock of a deque that has one; a test's scheduler has to know who waits for it.</summary>
    static virtual void Enter(Lock gate) => gate.Enter();

    /// <summary>Gives it back.</summary>
    static virtual void Exit(Lock gate) => gate.Exit();
}
