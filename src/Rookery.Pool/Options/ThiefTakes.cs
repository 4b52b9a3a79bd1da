namespace Rookery.Pool;

/// <summary>Which task a thief takes.</summary>
public enum ThiefTakes
{
    /// <summary>The task that has waited longest (the default).</summary>
    Oldest,

    /// <summary>The task queued last.</summary>
    Newest,
}
