using System.Collections.Immutable;
using System.Runtime.InteropServices;
using Rookery.Notation;

namespace Rookery.Traces.Files;

/// <summary>
/// Makes a trace of the rows of a file: checks their numbers, puts them in order, and keeps the labels once each.
/// </summary>
/// <remarks>
/// Used once; mutable, for one thread. A row takes 24 bytes; only when rows stand out of order are keys kept (12 bytes
/// a row) and the events copied once more.
/// </remarks>
internal sealed class TraceAssembler(TraceLimits limits)
{
    private readonly TraceRecorder _rows = new();
    private readonly Dictionary<int, string> _labels = [];
    private readonly HashSet<string> _texts = new(StringComparer.Ordinal);

    // The steps, once a row's step was not its own number.
    private List<long>? _steps;
    private readonly long _workersMax = Math.Min(limits.Workers, TraceEvent.WorkerMax + 1L);
    private long _keyLast = -1;
    private bool _isSorted = true;
    private bool _hasSteps;
    private int _taskMax = -1;
    private int _workerMax = -1;

    /// <summary>Number of rows so far.</summary>
    public int Count => _rows.Count;

    /// <summary>Adds a row.</summary>
    /// <exception cref="InputException">A number is out of range, or a limit is passed.</exception>
    public void Add(in TraceRow row, RowPlace place)
    {
        // One question for all numbers of a row that is as it should be: where a page interprets this, rows are slow.
        bool isInRange = unchecked(
            row.Time >= 0 && (ulong)row.Worker < (ulong)_workersMax && (ulong)(row.Task + 1) <= int.MaxValue
            && (ulong)(row.Other + 1) <= int.MaxValue && (ulong)row.Line <= int.MaxValue);
        if (!isInRange || _rows.Count >= limits.Rows)
            throw Refused(in row, place);

        AddKey(row, place);
        _workerMax = Math.Max(_workerMax, (int)row.Worker);
        _taskMax = Math.Max(_taskMax, (int)Math.Max(row.Task, row.Other));
        _rows.Add(new TraceEvent(row.Time, row.Kind, (int)row.Worker, (int)row.Task, (int)row.Other, (int)row.Line));
    }

    /// <summary>The task that a label in a row of this kind names; -1 when labels of such rows mean nothing.</summary>
    public static int LabelledTask(EventKind kind, long task, long other) => kind switch
    {
        EventKind.Fork or EventKind.Call => (int)other,
        EventKind.Begin => (int)task,
        _ => -1,
    };

    /// <summary>Names a task; the first name stays. Call after the row was added.</summary>
    /// <exception cref="InputException">The label is too long.</exception>
    public void AddLabel(int task, ReadOnlySpan<char> label, RowPlace place)
    {
        if (label.Length > limits.LabelLength)
            throw new InputException(TraceErrors.LabelTooLong(place, limits.LabelLength));

        if (task < 0 || _labels.ContainsKey(task))
            return;
        HashSet<string>.AlternateLookup<ReadOnlySpan<char>> texts = _texts.GetAlternateLookup<ReadOnlySpan<char>>();
        if (!texts.TryGetValue(label, out string? text))
            _texts.Add(text = label.ToString());
        _labels.Add(task, text);
    }

    /// <summary>The trace.</summary>
    /// <exception cref="InputException">Two rows have one step, numbers outgrow the file, or the metadata are
    /// wrong.</exception>
    public Trace Build(TraceMetadata metadata)
    {
        CheckNumber("task", _taskMax);
        CheckNumber("worker", _workerMax);
        TraceInputs inputs = metadata.ToInputs(_workerMax + 1, limits);
        CheckNumber("worker", inputs.Workers - 1);
        var labels = new TextLabels(LabelTable());
        Trace rows = _rows.Build(inputs, labels);
        return _isSorted ? rows : Sorted(rows, inputs, labels);
    }

    private ImmutableArray<string?> LabelTable()
    {
        string?[] table = new string?[_labels.Count == 0 ? 0 : _labels.Keys.Max() + 1];
        foreach ((int task, string label) in _labels)
            table[task] = label;
        return ImmutableCollectionsMarshal.AsImmutableArray(table);
    }

    // The first thing that is wrong with a row.
    private InputException Refused(in TraceRow row, RowPlace place)
    {
        if (_rows.Count >= limits.Rows)
            return new(TraceErrors.TooManyRows(limits.Rows));
        InputException? wrong = OutOfRange(place, "time", row.Time, 0, long.MaxValue)
            ?? OutOfRange(place, "worker", row.Worker, 0, TraceEvent.WorkerMax);
        if (wrong is null && row.Worker >= limits.Workers)
            wrong = new(TraceErrors.TooManyWorkers(row.Worker, limits.Workers));
        wrong ??= OutOfRange(place, "task", row.Task, -1, int.MaxValue - 1)
            ?? OutOfRange(place, "other", row.Other, -1, int.MaxValue - 1)
            ?? OutOfRange(place, "line", row.Line, 0, int.MaxValue);
        Invariant.Holds(wrong is not null, "A row is refused with which something is wrong.");
        return wrong!;
    }

    private static InputException? OutOfRange(RowPlace place, string column, long value, long least, long most) =>
        value < least || value > most ? new(TraceErrors.OutOfRange(place, column, value, least, most)) : null;

    private void CheckNumber(string column, int most)
    {
        if (most >= (long)Count + limits.NumbersAboveRows)
            throw new InputException(TraceErrors.NumberTooLarge(column, most, Count));
    }

    private void AddKey(in TraceRow row, RowPlace place)
    {
        if (row.Step is not { } step)
        {
            _isSorted &= row.Time >= _keyLast;
            _keyLast = row.Time;
            return;
        }

        if (step < 0)
            throw OutOfRange(place, "step", step, 0, long.MaxValue)!;
        _hasSteps = true;
        _isSorted &= step > _keyLast;
        _keyLast = step;

        // Steps that are the row's own number are the rule and need no list.
        if (_steps is null && step != Count)
            _steps = [.. Enumerable.Range(0, Count).Select(i => (long)i)];
        _steps?.Add(step);
    }

    private long[] Keys(Trace rows)
    {
        if (_hasSteps)
            return [.. _steps!];
        long[] times = new long[rows.Count];
        for (int i = 0; i < times.Length; i++)
            times[i] = rows[i].Time;
        return times;
    }

    private Trace Sorted(Trace rows, TraceInputs inputs, TextLabels labels)
    {
        long[] keys = Keys(rows);
        int[] order = new int[keys.Length];
        for (int i = 0; i < order.Length; i++)
            order[i] = i;
        Array.Sort(keys, order);

        var sorted = new TraceRecorder();
        for (int start = 0; start < keys.Length;)
        {
            int end = start + 1;
            while (end < keys.Length && keys[end] == keys[start])
                end++;
            if (_hasSteps && end > start + 1)
                throw new InputException(TraceErrors.RepeatedStep(keys[start]));

            // The sort is not stable; rows of one time keep the order of the file.
            Array.Sort(order, start, end - start);
            for (int i = start; i < end; i++)
                sorted.Add(rows[order[i]]);
            start = end;
        }

        return sorted.Build(inputs, labels);
    }
}
