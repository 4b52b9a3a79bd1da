using System.Collections.Concurrent;
using System.Diagnostics;
using System.Diagnostics.Tracing;

namespace Rookery.Measuring.Tasks;

/// <summary>Listens to the runtime's task scheduler: each thread keeps what it said, in its order.</summary>
/// <remarks>
/// The event source calls on the thread on which the event happens. Keywords: tasks (2), parallel (4) and waiting are
/// on by
/// 0x3, the ends of tasks by 0x40, waiting by 0x80. Costs about two microseconds an event, which is part of what is
/// recorded.
/// </remarks>
internal sealed class TaskListener : EventListener
{
    private const string SourceName = "System.Threading.Tasks.TplEventSource";
    private const EventKeywords Keywords = (EventKeywords)(0x1 | 0x2 | 0x40 | 0x80);

    private readonly ConcurrentDictionary<int, List<TaskEvent>> _threads = [];

    /// <summary>The events of each thread, by its number.</summary>
    public IReadOnlyDictionary<int, List<TaskEvent>> Threads => _threads;

    /// <summary>The program says that it is past the join of a task.</summary>
    public void Joined(int id) => Add(TaskEventKind.Joined, id);

    /// <inheritdoc/>
    protected override void OnEventSourceCreated(EventSource eventSource)
    {
        if (eventSource.Name == SourceName)
            EnableEvents(eventSource, EventLevel.Informational, Keywords);
    }

    /// <inheritdoc/>
    protected override void OnEventWritten(EventWrittenEventArgs eventData)
    {
        if (eventData.EventId is >= (int)TaskEventKind.Scheduled and <= (int)TaskEventKind.WaitBegin
            && eventData.Payload is { Count: > 2 } payload && payload[2] is int id)
            Add((TaskEventKind)eventData.EventId, id);
    }

    // The base class may call before our own fields are there.
    private void Add(TaskEventKind kind, int id) =>
        _threads?.GetOrAdd(Environment.CurrentManagedThreadId, static _ => [])
            .Add(new(Stopwatch.GetTimestamp(), kind, id));
}
