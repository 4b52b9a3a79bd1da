namespace Rookery.Checking;

/// <summary>What a scenario can fail to keep.</summary>
public enum Property
{
    /// <summary>Whatever was put in and not taken out is still there at the end.</summary>
    NothingLost,

    /// <summary>Nothing is taken out twice, and only what was put in.</summary>
    NothingTwice,

    /// <summary>Each operation seems to happen at one moment between its begin and its end.</summary>
    Linearizable,

    /// <summary>Every <c>assert</c> is true when it is reached.</summary>
    Assertions,

    /// <summary>Every index is inside its array.</summary>
    Bounds,

    /// <summary>Every computation has a result: no division by zero, no value too large, no endless loop.</summary>
    Computation,

    /// <summary>A lock is given back only by who holds it.</summary>
    Locking,

    /// <summary>Some thread can always go on until all have ended.</summary>
    NoDeadlock,
}
