namespace Rookery.Checking.Compiling;

/// <summary>What can go wrong inside a step, whatever is expected of the algorithm.</summary>
internal enum FaultKind
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>An assertion is not true.</summary>
    Assertion,

    /// <summary>An index is outside its array.</summary>
    Bounds,

    /// <summary>A division by zero.</summary>
    DivisionByZero,

    /// <summary>A shift by less than 0 or more than 31.</summary>
    BadShift,

    /// <summary>A value beyond <see cref="AlgorithmLimits.ValueMax"/>.</summary>
    ValueTooLarge,

    /// <summary>A loop without shared accesses that does not end.</summary>
    EndlessLoop,

    /// <summary>A lock is given back that is not held.</summary>
    NotLocked,
}
