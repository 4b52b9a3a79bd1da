namespace Rookery.Checking.Syntax;

/// <summary>How an access or a fence orders what stands around it.</summary>
internal enum AccessOrder
{
    /// <summary>Nothing is said: relaxed for loads and stores, acquire and release for read-modify-writes.</summary>
    Unmarked,

    /// <summary><c>relaxed</c>: only the location itself is kept in order.</summary>
    Relaxed,

    /// <summary><c>acquire</c>: a load sees what was written before the release that it reads from.</summary>
    Acquire,

    /// <summary><c>release</c>: who reads it with acquire sees what was written before.</summary>
    Release,

    /// <summary><c>full</c>: a fence that all threads agree on the order of.</summary>
    Full,
}
