using Parquet;
using Parquet.Schema;

namespace Rookery.Traces.Files;

/// <summary>
/// The columns of one row group while it is written; the buffers are used again for the next. Mutable.
/// </summary>
internal sealed class ParquetColumns
{
    private readonly DataField<long> _step = new("step");
    private readonly DataField<long> _time = new("time");
    private readonly DataField<int> _worker = new("worker");
    private readonly DataField<string> _kind = new("kind", false);
    private readonly DataField<int> _task = new("task");
    private readonly DataField<int> _other = new("other");
    private readonly DataField<int> _line = new("line");
    private readonly DataField<string> _label = new("label", true);

    private long[] _steps = [];
    private long[] _times = [];
    private int[] _workers = [];
    private string[] _kinds = [];
    private int[] _tasks = [];
    private int[] _others = [];
    private int[] _lines = [];
    private string?[] _labels = [];
    private int _count;

    public ParquetColumns() =>
        Schema = new ParquetSchema(_step, _time, _worker, _kind, _task, _other, _line, _label);

    /// <summary>The columns of docs/trace.md in their order.</summary>
    public ParquetSchema Schema { get; }

    /// <summary>Takes over some rows of a trace.</summary>
    public void Fill(Trace trace, int start, int count, LabelColumn labels)
    {
        if (_steps.Length < count)
            Grow(count);
        _count = count;
        for (int i = 0; i < count; i++)
        {
            ref readonly TraceEvent item = ref trace[start + i];
            _steps[i] = start + i;
            _times[i] = item.Time;
            _workers[i] = item.Worker;
            _kinds[i] = EventWords.WordOf(item.Kind);
            _tasks[i] = item.Task;
            _others[i] = item.Other;
            _lines[i] = item.Line;
            _labels[i] = labels.Of(item);
        }
    }

    /// <summary>Writes the rows as a row group.</summary>
    public async Task WriteAsync(ParquetRowGroupWriter group, CancellationToken cancellation)
    {
        await WriteAsync(group, _step, _steps, cancellation).ConfigureAwait(false);
        await WriteAsync(group, _time, _times, cancellation).ConfigureAwait(false);
        await WriteAsync(group, _worker, _workers, cancellation).ConfigureAwait(false);
        await group.WriteAsync(_kind, new ArraySegment<string>(_kinds, 0, _count), null).ConfigureAwait(false);
        await WriteAsync(group, _task, _tasks, cancellation).ConfigureAwait(false);
        await WriteAsync(group, _other, _others, cancellation).ConfigureAwait(false);
        await WriteAsync(group, _line, _lines, cancellation).ConfigureAwait(false);
        await group.WriteAsync(_label, new ArraySegment<string>(_labels!, 0, _count), null).ConfigureAwait(false);
    }

    private Task WriteAsync<T>(
        ParquetRowGroupWriter group, DataField<T> field, T[] values, CancellationToken cancellation)
        where T : struct =>
        group.WriteAsync<T>(field, values.AsMemory(0, _count), null, null, cancellation);

    private void Grow(int count)
    {
        _steps = new long[count];
        _times = new long[count];
        _workers = new int[count];
        _kinds = new string[count];
        _tasks = new int[count];
        _others = new int[count];
        _lines = new int[count];
        _labels = new string?[count];
    }
}
