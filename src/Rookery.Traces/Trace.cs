using System.Collections.Immutable;

namespace Rookery.Traces;

/// <summary>All that happened in one run, simulated or real: its inputs and its events in order.</summary>
/// <remarks>
/// Step <c>n</c> is the event with index <c>n</c>, from 0. Events are in order of time; events of one time stand in the
/// order in which they took effect, so that reading from the front never meets an effect before its cause. Immutable;
/// safe to read from several threads. Events lie in chunks of <see cref="ChunkLength"/>, so that a long run neither
/// copies nor doubles its memory while it is recorded.
/// </remarks>
public sealed class Trace
{
    /// <summary>Events in a chunk: 1.5 MiB, large enough to be rare, small enough not to waste memory.</summary>
    public const int ChunkLength = 1 << ChunkBits;

    private const int ChunkBits = 16;

    private readonly ImmutableArray<TraceEvent[]> _chunks;

    internal Trace(
        TraceInputs inputs,
        ImmutableArray<TraceEvent[]> chunks,
        int count,
        int taskCount,
        int workerCount,
        ITaskLabels labels)
    {
        Inputs = inputs;
        _chunks = chunks;
        Count = count;
        TaskCount = taskCount;
        WorkerCount = workerCount;
        Labels = labels;
    }

    /// <summary>What the run was made from.</summary>
    public TraceInputs Inputs { get; }

    /// <summary>Number of events.</summary>
    public int Count { get; }

    /// <summary>One more than the largest task number that appears.</summary>
    public int TaskCount { get; }

    /// <summary>One more than the largest worker number that appears.</summary>
    public int WorkerCount { get; }

    /// <summary>What the tasks are called.</summary>
    public ITaskLabels Labels { get; }

    /// <summary>The event of a step.</summary>
    /// <param name="step">From 0 up to, not including, <see cref="Count"/>.</param>
    /// <exception cref="IndexOutOfRangeException">There is no such step.</exception>
    public ref readonly TraceEvent this[int step] => ref _chunks[step >> ChunkBits][step & (ChunkLength - 1)];

    /// <summary>Number of chunks: the events can be read as <see cref="Chunk"/> 0, 1, … in turn.</summary>
    public int ChunkCount => _chunks.Length;

    /// <summary>The events of one chunk; all chunks but the last hold <see cref="ChunkLength"/>.</summary>
    public ReadOnlySpan<TraceEvent> Chunk(int chunk) =>
        _chunks[chunk].AsSpan(0, Math.Min(ChunkLength, Count - (chunk * ChunkLength)));

    /// <summary>Events from a step on: as many as asked for, or fewer where the chunk ends; none behind the
    /// last.</summary>
    internal ReadOnlySpan<TraceEvent> Portion(int from, int most)
    {
        if (from >= Count)
            return [];
        int start = from & (ChunkLength - 1);
        return _chunks[from >> ChunkBits].AsSpan(start, Math.Min(most, Math.Min(ChunkLength - start, Count - from)));
    }

    /// <summary>Time of the last event; 0 for an empty trace. For a finished run this is its makespan.</summary>
    public long Makespan => Count == 0 ? 0 : this[Count - 1].Time;

    /// <summary>The same events with other inputs, for example a corrected program name.</summary>
    public Trace WithInputs(TraceInputs inputs) => new(inputs, _chunks, Count, TaskCount, WorkerCount, Labels);
}
