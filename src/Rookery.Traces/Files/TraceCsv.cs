using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using CsvHelper;
using Rookery.Notation;
using Rookery.Traces.Files;

namespace Rookery.Traces;

/// <summary>
/// Traces as CSV: the run's inputs in lines that begin with <c>#</c>, a header, and a row for each event.
/// </summary>
/// <remarks>
/// The form is in docs/trace.md. UTF-8, fields separated by commas and quoted as RFC 4180 says. Reading accepts columns
/// in any order, columns that are not ours, and all ends of lines; writing gives the same bytes for the same trace.
/// </remarks>
public static class TraceCsv
{
    private const int MetadataLinesMax = 100_000;
    private const int RowsBetweenPauses = 4096;

    private static readonly CsvReaderOptions ReaderOptions = CsvReaderOptions.Default with
    {
        Separator = ',',
        Encoding = Encoding.UTF8,
        DetectSeparatorHint = false,
        FieldCountMismatch = CsvFieldCountHandling.Throw,
        MalformedData = CsvMalformedDataHandling.Throw,
        TrackLineNumbers = true,
        FormatProvider = CultureInfo.InvariantCulture,
    };

    private static readonly CsvWriterOptions WriterOptions = CsvWriterOptions.Default with
    {
        NewLine = "\n",
        FormatProvider = CultureInfo.InvariantCulture,
    };

    private static readonly string[] Header = ["step", "time", "worker", "kind", "task", "other", "line", "label"];

    /// <summary>Reads a trace.</summary>
    /// <param name="stream">The file's bytes from its beginning; stays open.</param>
    /// <param name="limits">How much is read at the most; the defaults when null.</param>
    /// <exception cref="InputException">The file is no trace, or larger than a limit.</exception>
    public static Trace Read(Stream stream, TraceLimits? limits = null) =>
        ReadAsync(stream, () => ValueTask.CompletedTask, limits).GetAwaiter().GetResult();

    /// <summary>Reads a trace in portions, so that a page with one thread can do something else in between.</summary>
    /// <param name="stream">The file's bytes from its beginning, in memory; stays open.</param>
    /// <param name="pause">Awaited every some thousand rows.</param>
    /// <param name="limits">How much is read at the most; the defaults when null.</param>
    /// <exception cref="InputException">The file is no trace, or larger than a limit.</exception>
    public static async Task<Trace> ReadAsync(Stream stream, Func<ValueTask> pause, TraceLimits? limits = null)
    {
        limits ??= TraceLimits.Default;
        using var lines = new LeadingLines(stream);
        lines.SkipByteOrderMark();
        var metadata = new TraceMetadata();
        int lineCount = ReadMetadata(lines, metadata, limits);
        using CsvReader reader = CsvReader.Create(
            lines, ReaderOptions with { MaxRecordSize = limits.CsvRowBytes }, true);
        try
        {
            return await ReadRowsAsync(reader, lineCount, metadata, limits, pause).ConfigureAwait(false);
        }
        catch (CsvFormatException e)
        {
            // A row that passes the size limit has no end, so the reader gives no reason of its own for it.
            long line = lineCount + Math.Max(1, reader.LineNumber);
            throw new InputException(
                e.Message.Contains(nameof(CsvReaderOptions.MaxRecordSize), StringComparison.Ordinal)
                    ? TraceErrors.RowTooLong(line, limits.CsvRowBytes)
                    : TraceErrors.NotCsv(line, e.Message));
        }
    }

    /// <summary>Writes a trace.</summary>
    /// <param name="trace">The trace.</param>
    /// <param name="stream">Gets the bytes; stays open.</param>
    /// <exception cref="ArgumentException">A name in the inputs has a space, colon or control character.</exception>
    public static void Write(Trace trace, Stream stream)
    {
        using (var text = new StreamWriter(stream, new UTF8Encoding(false), -1, true) { NewLine = "\n" })
        {
            foreach ((string key, string value) in TraceMetadata.Of(trace.Inputs))
                text.WriteLine($"# {key}: {(key == "source" || !IsPlain(value) ? Quoted(value) : value)}");
        }

        using CsvWriter writer = CsvWriter.Create(stream, WriterOptions, true);
        writer.WriteHeader(Header);
        var labels = new LabelColumn(trace);
        for (int step = 0; step < trace.Count; step++)
        {
            ref readonly TraceEvent item = ref trace[step];
            writer.WriteField(step, default);
            writer.WriteField(item.Time, default);
            writer.WriteField(item.Worker, default);
            writer.WriteField(EventWords.WordOf(item.Kind));
            writer.WriteField(item.Task, default);
            writer.WriteField(item.Other, default);
            writer.WriteField(item.Line, default);
            writer.WriteField(labels.Of(item) ?? "");
            writer.EndRecord();
        }
    }

    private static int ReadMetadata(LeadingLines lines, TraceMetadata metadata, TraceLimits limits)
    {
        int count = 0;
        while (lines.TakeLine(limits.MetadataLength) is { } line)
        {
            if (++count > MetadataLinesMax)
                throw new InputException(TraceErrors.MetadataTooLong(limits.MetadataLength));
            int colon = line.IndexOf(':', StringComparison.Ordinal);
            if (colon < 0)
                continue;
            string key = line[1..colon].Trim();
            metadata.Add(key, Unquoted(key, line[(colon + 1)..].Trim()), limits);
        }

        return count;
    }

    // CA1849: the bytes are in memory, so reading a row blocks nobody, and an await a row would cost more than the row.
#pragma warning disable CA1849
    private static async Task<Trace> ReadRowsAsync(
        CsvReader reader, int lineCount, TraceMetadata metadata, TraceLimits limits, Func<ValueTask> pause)
    {
        reader.ReadHeader();
        if (reader.Headers is not { Count: > 0 } headers)
            throw new InputException(TraceErrors.NoHeader());
        CsvColumns columns = CsvColumns.Find(headers, limits);
        var assembler = new TraceAssembler(limits);
        while (reader.Read())
        {
            ReadRow(reader, columns, lineCount, assembler);
            if (assembler.Count % RowsBetweenPauses == 0)
                await pause().ConfigureAwait(false);
        }

        return assembler.Build(metadata);
    }
#pragma warning restore CA1849

    private static void ReadRow(CsvReader reader, CsvColumns columns, int lineCount, TraceAssembler assembler)
    {
        var place = new RowPlace(lineCount + reader.LineNumber, assembler.Count);
        var row = new TraceRow(
            columns.Step < 0 ? null : Needed(reader, columns.Step, "step", place),
            Needed(reader, columns.Time, "time", place),
            Needed(reader, columns.Worker, "worker", place),
            Kind(reader, columns.Kind, place),
            Optional(reader, columns.Task, "task", place, -1),
            Optional(reader, columns.Other, "other", place, -1),
            Optional(reader, columns.Line, "line", place, 0));
        assembler.Add(row, place);
        if (columns.Label < 0 || reader.GetSpan(columns.Label).IsEmpty)
            return;
        int task = TraceAssembler.LabelledTask(row.Kind, row.Task, row.Other);
        if (task >= 0)
            assembler.AddLabel(task, reader.GetString(columns.Label), place);
    }

    private static long Needed(CsvReader reader, int index, string column, RowPlace place)
    {
        ReadOnlySpan<byte> field = reader.GetSpan(index).Trim((byte)' ');
        return field.IsEmpty
            ? throw new InputException(TraceErrors.Absent(place, column))
            : Number(field, column, place);
    }

    private static long Optional(CsvReader reader, int index, string column, RowPlace place, long none)
    {
        ReadOnlySpan<byte> field = reader.GetSpan(index).Trim((byte)' ');
        return field.IsEmpty ? none : Number(field, column, place);
    }

    private static long Number(ReadOnlySpan<byte> field, string column, RowPlace place) =>
        long.TryParse(field, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out long value)
            ? value
            : throw new InputException(TraceErrors.NotNumber(place, column, Encoding.UTF8.GetString(field)));

    private static EventKind Kind(CsvReader reader, int index, RowPlace place)
    {
        ReadOnlySpan<byte> field = reader.GetSpan(index).Trim((byte)' ');
        if (field.IsEmpty)
            throw new InputException(TraceErrors.Absent(place, "kind"));
        return EventWords.TryParse(field, out EventKind kind)
            ? kind
            : throw new InputException(TraceErrors.UnknownKind(place, Encoding.UTF8.GetString(field)));
    }

    // A value that would not survive as it stands is written as a JSON string, as the source always is.
    private static bool IsPlain(string value) =>
        value.Length > 0 && value[0] != '"' && value.AsSpan().Trim().Length == value.Length
        && !value.Any(c => char.IsControl(c) || char.IsSurrogate(c));

    private static string Quoted(string value) => $"\"{JavaScriptEncoder.UnsafeRelaxedJsonEscaping.Encode(value)}\"";

    private static string Unquoted(string key, string value)
    {
        if (!value.StartsWith('"'))
            return value;
        try
        {
            using JsonDocument document = JsonDocument.Parse(value);
            return document.RootElement.GetString() ?? "";
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException)
        {
            throw new InputException(TraceErrors.Metadata(key, value, "a JSON string"));
        }
    }
}
