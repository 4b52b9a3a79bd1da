namespace Rookery.Lab.Predict;

/// <summary>An end of a queue.</summary>
internal enum QueueEnd : byte
{
    /// <summary>The top: what has waited longest.</summary>
    Oldest,

    /// <summary>The bottom: what was queued last.</summary>
    Newest,
}
