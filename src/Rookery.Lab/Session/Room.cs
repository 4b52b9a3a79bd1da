namespace Rookery.Lab.Session;

/// <summary>The part of the lab that is open.</summary>
internal enum Room : byte
{
    /// <summary>One run, step by step.</summary>
    Stage,

    /// <summary>Many runs: curves, sweeps and claims.</summary>
    Studies,

    /// <summary>The deque's few lines, checked.</summary>
    Deques,
}
