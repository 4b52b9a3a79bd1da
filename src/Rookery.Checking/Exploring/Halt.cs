namespace Rookery.Checking.Exploring;

/// <summary>Why the interpreter stopped.</summary>
internal enum Halt
{
    /// <summary>Before the next shared access: the step is over.</summary>
    Point,

    /// <summary>At a shared access.</summary>
    Access,

    /// <summary>At the end of an operation.</summary>
    Return,

    /// <summary>At the end of the thread.</summary>
    End,

    /// <summary>Something went wrong.</summary>
    Fault,
}
