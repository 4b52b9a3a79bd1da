using System.Numerics;
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

    /// <summary>Rows between two pauses: some milliseconds also where code is interpreted.</summary>
    private const int RowsBetweenPauses = 8_192;

    private readonly DataField? _step;
    private readonly DataField _time;
    private readonly DataField _worker;
    private readonly DataField _kind;
    private readonly DataField _task;
    private readonly DataField _other;
    private readonly DataField _line;
    private readonly DataField? _label;
    private readonly TraceLimits _limits;

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
    /// <exception cref="InputException">A row is wrong, or a limit is passed.</exception>
    public async Task ReadAsync(
        ParquetRowGroupReader group, TraceAssembler assembler, CancellationToken cancellation,
        Func<int, Task>? pause = null)
    {
        if (group.RowCount > _limits.RowGroupRows)
            throw new InputException(TraceErrors.RowGroupTooLarge(_limits.RowGroupRows));
        int count = (int)group.RowCount;
        async Task<T> Column<T>(Task<T> reading)
        {
            T values = await reading.ConfigureAwait(false);
            if (pause is not null)
                await pause(assembler.Count).ConfigureAwait(false);
            return values;
        }

        var columns = new Columns(
            _step is null ? null : await Column(NumbersAsync(group, _step, count, cancellation)).ConfigureAwait(false),
            await Column(NumbersAsync(group, _time, count, cancellation)).ConfigureAwait(false),
            await Column(NumbersAsync(group, _worker, count, cancellation)).ConfigureAwait(false),
            await Column(TextsAsync(group, _kind, count, cancellation)).ConfigureAwait(false),
            await Column(NumbersAsync(group, _task, count, cancellation)).ConfigureAwait(false),
            await Column(NumbersAsync(group, _other, count, cancellation)).ConfigureAwait(false),
            await Column(NumbersAsync(group, _line, count, cancellation)).ConfigureAwait(false),
            _label is null ? null : await Column(TextsAsync(group, _label, count, cancellation)).ConfigureAwait(false));
        for (int start = 0; start < count; start += RowsBetweenPauses)
        {
            Assemble(columns, start, Math.Min(count, start + RowsBetweenPauses), assembler);
            cancellation.ThrowIfCancellationRequested();
            if (pause is not null)
                await pause(assembler.Count).ConfigureAwait(false);
        }
    }

    private static void Assemble(Columns columns, int start, int end, TraceAssembler assembler)
    {
        for (int i = start; i < end; i++)
        {
            var place = new RowPlace(0, assembler.Count);
            var row = new TraceRow(
                columns.Steps is null ? null : Needed(columns.Steps[i], "step", place),
                Needed(columns.Times[i], "time", place),
                Needed(columns.Workers[i], "worker", place),
                Kind(columns.Kinds[i], place),
                columns.Tasks[i] == Null ? -1 : columns.Tasks[i],
                columns.Others[i] == Null ? -1 : columns.Others[i],
                columns.Lines[i] == Null ? 0 : columns.Lines[i]);
            assembler.Add(row, place);
            if (columns.Labels?[i] is { Length: > 0 } label)
            {
                int task = TraceAssembler.LabelledTask(row.Kind, row.Task, row.Other);
                if (task >= 0)
                    assembler.AddLabel(task, label, place);
            }
        }
    }

    private static long Needed(long value, string column, RowPlace place) =>
        value != Null ? value : throw new InputException(TraceErrors.Absent(place, column));

    private static EventKind Kind(string? word, RowPlace place)
    {
        if (string.IsNullOrEmpty(word))
            throw new InputException(TraceErrors.Absent(place, "kind"));
        return EventWords.TryParse(word, out EventKind kind)
            ? kind
            : throw new InputException(TraceErrors.UnknownKind(place, word));
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

    private static Task<long[]> NumbersAsync(
        ParquetRowGroupReader group, DataField field, int count, CancellationToken cancellation)
    {
        Type type = field.ClrType;
        return type == typeof(sbyte) ? WidenedAsync<sbyte>(group, field, count, cancellation)
            : type == typeof(byte) ? WidenedAsync<byte>(group, field, count, cancellation)
            : type == typeof(short) ? WidenedAsync<short>(group, field, count, cancellation)
            : type == typeof(ushort) ? WidenedAsync<ushort>(group, field, count, cancellation)
            : type == typeof(int) ? WidenedAsync<int>(group, field, count, cancellation)
            : type == typeof(uint) ? WidenedAsync<uint>(group, field, count, cancellation)
            : type == typeof(long) ? WidenedAsync<long>(group, field, count, cancellation)
            : WidenedAsync<ulong>(group, field, count, cancellation);
    }

    private static async Task<long[]> WidenedAsync<T>(
        ParquetRowGroupReader group, DataField field, int count, CancellationToken cancellation)
        where T : struct, IBinaryInteger<T>
    {
        long[] wide = new long[count];
        if (field.IsNullable)
        {
            var values = new T?[count];
            await group.ReadAsync<T>(field, values.AsMemory(), null, cancellation).ConfigureAwait(false);
            for (int i = 0; i < count; i++)
                wide[i] = values[i] is { } value ? long.CreateSaturating(value) : Null;
        }
        else
        {
            var values = new T[count];
            await group.ReadAsync<T>(field, values.AsMemory(), null, cancellation).ConfigureAwait(false);
            for (int i = 0; i < count; i++)
                wide[i] = long.CreateSaturating(values[i]);
        }

        return wide;
    }

    private static async Task<string?[]> TextsAsync(
        ParquetRowGroupReader group, DataField field, int count, CancellationToken cancellation)
    {
        string?[] texts = new string?[count];
        await group.ReadAsync(field, texts.AsMemory()!, null, cancellation).ConfigureAwait(false);
        return texts;
    }

    private sealed record Columns(
        long[]? Steps, long[] Times, long[] Workers, string?[] Kinds, long[] Tasks, long[] Others, long[] Lines,
        string?[]? Labels);
}
