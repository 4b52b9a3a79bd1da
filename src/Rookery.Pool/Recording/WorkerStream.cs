namespace Rookery.Pool.Recording;

/// <summary>The events of one worker in its own order, and which of them depend on other workers. Mutable.</summary>
internal sealed class WorkerStream
{
    /// <summary>What certainly happened, in order.</summary>
    public List<RecordedEvent> Events { get; } = [];

    /// <summary>Looks that got nothing, to be placed where that was true.</summary>
    public List<Look> Looks { get; } = [];

    /// <summary>Looks that a trace has no place for.</summary>
    public int LooksLeftOut { get; set; }

    /// <summary>Waits at joins: the event's index, and a child that had not ended then.</summary>
    public List<(int Index, int Child)> Waits { get; } = [];

    /// <summary>Passed joins: the event's index, and a child that had ended before.</summary>
    public List<(int Index, int Child)> Passes { get; } = [];

    /// <summary>Operations on queues with a lock: the event's index, whose queue, and where in its order.</summary>
    public List<(int Index, int Queue, int Ticket)> Tickets { get; } = [];
}
