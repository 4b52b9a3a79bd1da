namespace Rookery.Checking;

/// <summary>The answer about one scenario under one memory model.</summary>
public enum Verdict
{
    /// <summary>All that is expected holds, in every execution.</summary>
    Holds,

    /// <summary>Something fails; a shortest execution shows it.</summary>
    Broken,

    /// <summary>What a litmus test asks for can happen; a shortest execution shows it.</summary>
    Allowed,

    /// <summary>What a litmus test asks for cannot happen.</summary>
    Forbidden,

    /// <summary>A limit was reached before there was an answer.</summary>
    OutOfBudget,
}
