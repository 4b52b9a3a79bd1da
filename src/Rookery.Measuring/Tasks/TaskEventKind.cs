namespace Rookery.Measuring.Tasks;

/// <summary>What happened to a task of the runtime's library; the numbers are those of its event source.</summary>
internal enum TaskEventKind
{
    /// <summary>Our program is past the join of a task; the source is silent when that had ended already.</summary>
    Joined = 0,

    /// <summary>It was queued.</summary>
    Scheduled = 7,

    /// <summary>It begins.</summary>
    Started = 8,

    /// <summary>It has ended.</summary>
    Completed = 9,

    /// <summary>Somebody waits for it.</summary>
    WaitBegin = 10,
}
