namespace Rookery.Drawing;

/// <summary>What the colour of computing says in a timeline.</summary>
public enum TimelineColours : byte
{
    /// <summary>
    /// Whose work it is: that of the worker from which it, or the task that forked it, was stolen last. With more than
    /// <see cref="Style.WorkerPaints"/> workers, or a thread for each task, the same as <see cref="Kind"/>.
    /// </summary>
    Origin,

    /// <summary>One colour for all computing.</summary>
    Kind,
}
