namespace Rookery.Checking.Witnesses;

/// <summary>Why a computation has no result.</summary>
public enum ComputationTrouble
{
    /// <summary>It makes a value beyond <see cref="AlgorithmLimits.ValueMax"/>.</summary>
    ValueTooLarge,

    /// <summary>It divides by zero.</summary>
    DivisionByZero,

    /// <summary>It shifts by less than 0 or more than 31.</summary>
    BadShift,

    /// <summary>A loop goes on for ever without looking at shared memory.</summary>
    EndlessLoop,

    /// <summary>Emptying the deque at the end does not come to an end.</summary>
    EndlessDrain,
}
