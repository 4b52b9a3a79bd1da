namespace Rookery.Pool;

/// <summary>Which of its own tasks a worker takes.</summary>
public enum OwnerTakes
{
    /// <summary>The task queued last: depth first (the default).</summary>
    Newest,

    /// <summary>The task queued first: breadth first.</summary>
    Oldest,
}
