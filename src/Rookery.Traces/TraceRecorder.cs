using System.Collections.Immutable;

namespace Rookery.Traces;

/// <summary>Collects the events of a run into a <see cref="Trace"/>; used once. Mutable, for one thread.</summary>
/// <remarks>
/// Events are stored as given, lawful or not: the audit is the judge. 24 bytes an event, and one chunk at the most
/// is partly empty.
/// </remarks>
public sealed class TraceRecorder
{
    private readonly ImmutableArray<TraceEvent[]>.Builder _chunks = ImmutableArray.CreateBuilder<TraceEvent[]>();
    private TraceEvent[] _last = [];
    private int _used;
    private int _taskMax = -1;
    private int _workerMax = -1;

    /// <summary>Number of events so far.</summary>
    public int Count => _chunks.Count == 0 ? 0 : ((_chunks.Count - 1) * Trace.ChunkLength) + _used;

    /// <summary>Appends an event.</summary>
    public void Add(in TraceEvent item)
    {
        if (_used == _last.Length)
            StartChunk();
        _last[_used++] = item;
        if (item.Worker > _workerMax)
            _workerMax = item.Worker;
        if (item.Task > _taskMax)
            _taskMax = item.Task;
        if (item.Other > _taskMax && item.Kind is EventKind.Fork or EventKind.Call)
            _taskMax = item.Other;
    }

    /// <summary>The trace of all events so far. The recorder must not be used afterwards.</summary>
    public Trace Build(TraceInputs inputs, ITaskLabels labels) =>
        new(inputs, _chunks.ToImmutable(), Count, _taskMax + 1, _workerMax + 1, labels);

    private void StartChunk()
    {
        // A short run gets small arrays: the first chunk grows by doubling up to the full length.
        if (_chunks.Count == 1 && _last.Length < Trace.ChunkLength)
        {
            Array.Resize(ref _last, _last.Length * 2);
            _chunks[0] = _last;
            return;
        }

        _last = new TraceEvent[_chunks.Count == 0 ? 256 : Trace.ChunkLength];
        _chunks.Add(_last);
        _used = 0;
    }
}
