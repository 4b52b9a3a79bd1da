namespace Rookery.Traces.Tests;

public sealed class TraceRecorderTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(256)]
    [InlineData(257)]
    [InlineData(Trace.ChunkLength)]
    [InlineData((2 * Trace.ChunkLength) + 3)]
    public void Build_AnyNumberOfEvents_KeepsAllInOrder(int count)
    {
        var recorder = new TraceRecorder();
        for (int i = 0; i < count; i++)
            recorder.Add(new TraceEvent(i, EventKind.Work, i % 7, i % 5, -1, i % 11));
        Trace trace = recorder.Build(new TraceInputs(), TextLabels.None);

        Assert.Equal(count, trace.Count);
        for (int i = 0; i < count; i++)
            Assert.Equal(new TraceEvent(i, EventKind.Work, i % 7, i % 5, -1, i % 11), trace[i]);
        Assert.Equal(count, Enumerable.Range(0, trace.ChunkCount).Sum(c => trace.Chunk(c).Length));
    }

    [Fact]
    public void TraceEvent_ExtremeFields_AreKept()
    {
        var item = new TraceEvent(long.MaxValue, EventKind.Stop, TraceEvent.WorkerMax, int.MaxValue, -1, 65_535);
        Assert.Equal(
            (long.MaxValue, EventKind.Stop, TraceEvent.WorkerMax, int.MaxValue, -1, 65_535),
            (item.Time, item.Kind, item.Worker, item.Task, item.Other, item.Line));
    }

    [Fact]
    public void TraceEvent_InMemory_Takes24Bytes() =>
        Assert.Equal(24, System.Runtime.CompilerServices.Unsafe.SizeOf<TraceEvent>());
}
