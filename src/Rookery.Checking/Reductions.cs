namespace Rookery.Checking;

/// <summary>What a search may leave out because it cannot matter; docs/checker.md says why of each.</summary>
[Flags]
public enum Reductions
{
    /// <summary>Nothing: every reachable state is counted.</summary>
    None = 0,

    /// <summary>An operation's own names are forgotten when their values can no longer matter.</summary>
    Names = 1,

    /// <summary>Of states that differ only in which of several equal threads is which, one is kept.</summary>
    Symmetry = 2,

    /// <summary>A read of memory that no other thread ever writes is no step of its own.</summary>
    Silent = 4,

    /// <summary>
    /// A step that no other thread can tell from here on is made before everything else, and alone. Only for the
    /// verdict: a shortest execution, and classes of progress, are found without.
    /// </summary>
    Local = 8,

    /// <summary>All of them.</summary>
    All = Names | Symmetry | Silent | Local,
}
