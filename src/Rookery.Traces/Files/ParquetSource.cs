using System.Buffers;
using System.Numerics;
using System.Runtime.InteropServices;
using Parquet;
using Parquet.Schema;
using Rookery.Notation;

namespace Rookery.Traces.Files;

/// <summary>
/// Reads our columns out of a Parquet file, whatever integers the file keeps them in. Mutable, for one thread.
/// </summary>
internal sealed class ParquetSource
{
    // Stands for a null, in half the memory of a nullable; no column of ours may hold so small a number.
    private const long Null = long.MinValue;

    private const int PartLength = 4096;

    private readonly DataField? _step;
    private readonly DataField _time;
    private readonly DataField _worker;
    private readonly DataField _kind;
    private readonly DataField _task;
    private readonly DataField _other;
    private readonly DataField _line;
    private readonly DataField? _label;
    private readonly TraceLimits _limits;
    private long[] _steps = [];
    private long[] _times = [];
    private long[] _workers = [];
    private long[] _tasks = [];
    private long[] _others = [];
    private long[] _lines = [];
    private ReadOnlyMemory<char>[] _kinds = [];
    private ReadOnlyMemory<char>?[] _labels = [];

    /// <summary>Finds the columns.</summary>
    /// <exception cref="InputException">A column is missing, there twice, or of the wrong type.</exception>
    public ParquetSource(ParquetSchema schema, TraceLimits limits)
    {
        _limits = limits;
        IReadOnlyList<Field> fields = schema.Fields;
        _step = Number(fields, "step", false);
        _time = Number(fields, "time", true)!;
        _worker = Number(fields, "worker", true)!;
        _kind = Text(fields, "kind", true)!;
        _task = Number(fields, "task", true)!;
        _other = Number(fields, "other", true)!;
        _line = Number(fields, "line", true)!;
        _label = Text(fields, "label", false);
    }

    /// <summary>Reads all rows of a row group.</summary>
    /// <param name="group">The row group.</param>
    /// <param name="assembler">Gets the rows.</param>
    /// <param name="pause">Awaited after each column and every some thousand rows; null for no pause.</param>
    /// <param name="cancellation">Stops reading.</param>
    /// <exception cref="InputException">A row is wrong, or a limit is passed.</exception>
    public async Task ReadAsync(
        ParquetRowGroupReader group,
        TraceAssembler assembler,
        Func<ValueTask>? pause,
        CancellationToken cancellation)
    {
        if (group.RowCount > _limits.RowGroupRows)
            throw new InputException(TraceErrors.RowGroupTooLarge(_limits.RowGroupRows));
        int count = (int)group.RowCount;
        if (count > _times.Length)
            Grow(count);
        (DataField? Field, long[] Values)[] numbers =
        [
            (_step, _steps), (_time, _times), (_worker, _workers), (_task, _tasks), (_other, _others), (_line, _lines),
        ];
        foreach ((DataField? field, long[] values) in numbers)
        {
            if (field is null)
                continue;
            await NumbersAsync(group, field, values.AsMemory(0, count), cancellation).ConfigureAwait(false);
            await PauseAsync(pause).ConfigureAwait(false);
        }

        await KindsAsync(group, _kinds.AsMemory(0, count), cancellation).ConfigureAwait(false);
        await PauseAsync(pause).ConfigureAwait(false);
        if (_label is not null)
            await LabelsAsync(group, _label, _labels.AsMemory(0, count), cancellation).ConfigureAwait(false);
        for (int start = 0; start < count; start += PartLength)
        {
            await PauseAsync(pause).ConfigureAwait(false);
            AddRows(assembler, start, Math.Min(start + PartLength, count));
        }
    }

    private static ValueTask PauseAsync(Func<ValueTask>? pause) => pause is null ? ValueTask.CompletedTask : pause();

    private void AddRows(TraceAssembler assembler, int start, int end)
    {
        for (int i = start; i < end; i++)
        {
            var place = new RowPlace(0, assembler.Count);
            (long time, long worker) = (_times[i], _workers[i]);
            (long task, long other, long line) = (_tasks[i], _others[i], _lines[i]);
            if (time == Null || worker == Null)
                throw new InputException(TraceErrors.Absent(place, time == Null ? "time" : "worker"));
            var row = new TraceRow(
                _step is null ? null : Needed(_steps[i], "step", place), time, worker, Kind(_kinds[i].Span, place),
                task == Null ? -1 : task, other == Null ? -1 : other, line == Null ? 0 : line);
            assembler.Add(in row, place);
            if (_label is null || _labels[i] is not { IsEmpty: false } label)
                continue;
            int labelled = TraceAssembler.LabelledTask(row.Kind, row.Task, row.Other);
            if (labelled >= 0)
                assembler.AddLabel(labelled, label.Span, place);
        }
    }

    // The buffers are used again for each row group: a file has many of them.
    private void Grow(int count)
    {
        if (_step is not null)
            _steps = new long[count];
        _times = new long[count];
        _workers = new long[count];
        _tasks = new long[count];
        _others = new long[count];
        _lines = new long[count];
        _kinds = new ReadOnlyMemory<char>[count];
        if (_label is not null)
            _labels = new ReadOnlyMemory<char>?[count];
    }

    private static long Needed(long value, string column, RowPlace place) =>
        value != Null ? value : throw new InputException(TraceErrors.Absent(place, column));

    private static EventKind Kind(ReadOnlySpan<char> word, RowPlace place)
    {
        if (word.IsEmpty)
            throw new InputException(TraceErrors.Absent(place, "kind"));
        return EventWords.TryParse(word, out EventKind kind)
            ? kind
            : throw new InputException(TraceErrors.UnknownKind(place, word.ToString()));
    }

    private static DataField? Number(IReadOnlyList<Field> fields, string column, bool isNeeded)
    {
        DataField? field = Find(fields, column, isNeeded);
        return field is null || IsInteger(field.ClrType)
            ? field
            : throw new InputException(TraceErrors.ColumnType(column, field.ClrType.Name, "whole numbers"));
    }

    private static DataField? Text(IReadOnlyList<Field> fields, string column, bool isNeeded)
    {
        DataField? field = Find(fields, column, isNeeded);
        bool isText = field is null || field.ClrType == typeof(string) || field.ClrType == typeof(ReadOnlyMemory<char>);
        return isText
            ? field
            : throw new InputException(TraceErrors.ColumnType(column, field!.ClrType.Name, "text"));
    }

    private static DataField? Find(IReadOnlyList<Field> fields, string column, bool isNeeded)
    {
        Field? found = null;
        foreach (Field field in fields.Where(f => f.Name == column))
            found = found is null ? field : throw new InputException(TraceErrors.RepeatedColumn(column));
        if (found is null && isNeeded)
            throw new InputException(TraceErrors.MissingColumn(column, fields.Select(f => f.Name)));
        return found switch
        {
            null => null,
            DataField { IsArray: false } flat => flat,
            _ => throw new InputException(TraceErrors.ColumnType(column, "lists", "one value in each row")),
        };
    }

    private static bool IsInteger(Type type) =>
        type == typeof(sbyte) || type == typeof(byte) || type == typeof(short) || type == typeof(ushort)
        || type == typeof(int) || type == typeof(uint) || type == typeof(long) || type == typeof(ulong);

    private static Task NumbersAsync(
        ParquetRowGroupReader group, DataField field, Memory<long> into, CancellationToken cancellation)
    {
        Type type = field.ClrType;
        return type == typeof(sbyte) ? WidenedAsync<sbyte>(group, field, into, cancellation)
            : type == typeof(byte) ? WidenedAsync<byte>(group, field, into, cancellation)
            : type == typeof(short) ? WidenedAsync<short>(group, field, into, cancellation)
            : type == typeof(ushort) ? WidenedAsync<ushort>(group, field, into, cancellation)
            : type == typeof(int) ? WidenedAsync<int>(group, field, into, cancellation)
            : type == typeof(uint) ? WidenedAsync<uint>(group, field, into, cancellation)
            : type == typeof(long) ? WidenedAsync<long>(group, field, into, cancellation)
            : WidenedAsync<ulong>(group, field, into, cancellation);
    }

    private static async Task WidenedAsync<T>(
        ParquetRowGroupReader group, DataField field, Memory<long> into, CancellationToken cancellation)
        where T : struct, IBinaryInteger<T>
    {
        if (field.IsNullable)
        {
            T?[] values = ArrayPool<T?>.Shared.Rent(into.Length);
            await group.ReadAsync<T>(field, values.AsMemory(0, into.Length), null, cancellation).ConfigureAwait(false);
            WidenSome<T>(values, into.Span);
            ArrayPool<T?>.Shared.Return(values);
        }
        else
        {
            T[] values = ArrayPool<T>.Shared.Rent(into.Length);
            await group.ReadAsync<T>(field, values.AsMemory(0, into.Length), null, cancellation).ConfigureAwait(false);
            Widen<T>(values, into.Span);
            ArrayPool<T>.Shared.Return(values);
        }
    }

    private static void Widen<T>(ReadOnlySpan<T> values, Span<long> into)
        where T : struct, IBinaryInteger<T>
    {
        if (typeof(T) == typeof(long))
        {
            MemoryMarshal.Cast<T, long>(values)[..into.Length].CopyTo(into);
            return;
        }

        if (typeof(T) == typeof(int))
        {
            ReadOnlySpan<int> numbers = MemoryMarshal.Cast<T, int>(values);
            for (int i = 0; i < into.Length; i++)
                into[i] = numbers[i];
            return;
        }

        for (int i = 0; i < into.Length; i++)
            into[i] = long.CreateSaturating(values[i]);
    }

    private static void WidenSome<T>(T?[] values, Span<long> into)
        where T : struct, IBinaryInteger<T>
    {
        // As written by ourselves; by way of any integer it takes many times as long where a page interprets it.
        if (values is int?[] numbers)
        {
            for (int i = 0; i < into.Length; i++)
                into[i] = numbers[i] ?? Null;
            return;
        }

        for (int i = 0; i < into.Length; i++)
            into[i] = values[i] is { } value ? long.CreateSaturating(value) : Null;
    }

    // As slices of what the reader holds: a text a row would be most of the memory that reading takes. A column that
    // may have nulls is read as such, whether it has some or not.
    private async Task KindsAsync(
        ParquetRowGroupReader group, Memory<ReadOnlyMemory<char>> into, CancellationToken cancellation)
    {
        if (!_kind.IsNullable)
        {
            await group.ReadAsync<ReadOnlyMemory<char>>(_kind, into, null, cancellation).ConfigureAwait(false);
            return;
        }

        ReadOnlyMemory<char>?[] values = ArrayPool<ReadOnlyMemory<char>?>.Shared.Rent(into.Length);
        Memory<ReadOnlyMemory<char>?> part = values.AsMemory(0, into.Length);
        await group.ReadAsync<ReadOnlyMemory<char>>(_kind, part, null, cancellation).ConfigureAwait(false);
        for (int i = 0; i < into.Length; i++)
            into.Span[i] = values[i] ?? default;
        ArrayPool<ReadOnlyMemory<char>?>.Shared.Return(values, clearArray: true);
    }

    private static async Task LabelsAsync(
        ParquetRowGroupReader group, DataField field, Memory<ReadOnlyMemory<char>?> into,
        CancellationToken cancellation)
    {
        if (field.IsNullable)
        {
            await group.ReadAsync<ReadOnlyMemory<char>>(field, into, null, cancellation).ConfigureAwait(false);
            return;
        }

        ReadOnlyMemory<char>[] values = ArrayPool<ReadOnlyMemory<char>>.Shared.Rent(into.Length);
        Memory<ReadOnlyMemory<char>> part = values.AsMemory(0, into.Length);
        await group.ReadAsync<ReadOnlyMemory<char>>(field, part, null, cancellation).ConfigureAwait(false);
        for (int i = 0; i < into.Length; i++)
            into.Span[i] = values[i];
        ArrayPool<ReadOnlyMemory<char>>.Shared.Return(values, clearArray: true);
    }
}
