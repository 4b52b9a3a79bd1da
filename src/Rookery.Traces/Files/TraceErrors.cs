using System.Collections.Immutable;
using System.Globalization;
using Rookery.Notation;

namespace Rookery.Traces.Files;

/// <summary>All that can be wrong with a trace file, in one place. Codes <c>TR001</c> and up are stable.</summary>
/// <remarks>
/// Text that comes from the file is shortened before it is quoted, and its control characters are replaced.
/// </remarks>
internal static class TraceErrors
{
    private const int QuotedLengthMax = 60;

    public static Diagnostic NotCsv(long line, string why) => new(
        "TR001", At(line), $"The CSV cannot be read: {why}",
        "Fields are separated by commas; a field with a comma, a quote or a line break stands in double quotes.");

    public static Diagnostic NotParquet(string why) => new(
        "TR002", default, $"The file is no readable Parquet file: {why}.",
        "It may be cut off or damaged; write it again, or give the trace as CSV.");

    public static Diagnostic NoHeader() => new(
        "TR003", default, "The file has no header row.",
        "The first row after the lines with # names the columns: time,worker,kind,task,other,line.");

    public static Diagnostic MissingColumn(string column, IEnumerable<string> found) => new(
        "TR004", default, $"There is no column '{column}'; found {Listed(found)}.",
        NearestWord.Of(column, found) is { } near
            ? $"Did you mean '{column}' where it says '{Quoted(near)}'?"
            : "A trace has the columns time, worker, kind, task, other and line, and may have step and label.");

    public static Diagnostic RepeatedColumn(string column) => new(
        "TR005", default, $"There are several columns '{column}'.", "Keep one of them.");

    public static Diagnostic ColumnType(string column, string found, string wanted) => new(
        "TR006", default, $"Column '{column}' holds {found}, not {wanted}.",
        $"Cast it to {wanted} when the file is written.");

    public static Diagnostic NotNumber(RowPlace place, string column, string found) => new(
        "TR007", place.Span, $"{place}: {column} is '{Quoted(found)}', not a whole number of 64 bits.",
        "Write digits, with a minus sign where needed, and nothing else.");

    public static Diagnostic OutOfRange(RowPlace place, string column, long found, long least, long most) => new(
        "TR008", place.Span,
        string.Create(CultureInfo.InvariantCulture, $"{place}: {column} is {found}, not from {least} to {most}."),
        column is "task" or "other" ? "-1 or nothing stands for none." : "");

    public static Diagnostic Absent(RowPlace place, string column) => new(
        "TR009", place.Span, $"{place}: {column} is empty.", "Each event has a time, a worker and a kind.");

    public static Diagnostic UnknownKind(RowPlace place, string found) => new(
        "TR010", place.Span, $"{place}: there is no kind of event '{Quoted(found)}'.",
        NearestWord.Of(found, EventWords.All) is { } near
            ? $"Did you mean '{near}'?"
            : $"Kinds are {string.Join(", ", EventWords.All)}.");

    public static Diagnostic RepeatedStep(long step) => new(
        "TR011", default, string.Create(CultureInfo.InvariantCulture, $"Several rows have step {step}."),
        "Number the events from 0, or leave the column out: rows are then ordered by time.");

    public static Diagnostic NumberTooLarge(string column, long found, int rows) => new(
        "TR012", default,
        string.Create(CultureInfo.InvariantCulture,
            $"The largest {column} number is {found}, in a file of {rows} events."),
        "Number them from 0 without gaps: each has at least one event.");

    public static Diagnostic Metadata(string key, string found, string wanted) => new(
        "TR013", default, $"The metadata's '{Quoted(key)}' is '{Quoted(found)}', not {wanted}.",
        "Mend it, or leave it out.");

    public static Diagnostic Version(string found) => new(
        "TR014", default, $"The trace is of version '{Quoted(found)}'; this program reads version 1.",
        "Read it with a newer program.");

    public static Diagnostic RepeatedKey(string key) => new(
        "TR015", default, $"The metadata has '{Quoted(key)}' twice.", "Keep one of them.");

    public static Diagnostic TooManyRows(long most) => Limit(
        "TR020", "events", most, "Make the program smaller, or record a part of the run.");

    public static Diagnostic TooManyWorkers(long found, long most) => Limit(
        "TR021", "workers", most, string.Create(CultureInfo.InvariantCulture, $"Worker {found} appears."));

    public static Diagnostic TooManyColumns(long most) => Limit(
        "TR022", "columns", most, "Leave out what is not ours.");

    public static Diagnostic MetadataTooLong(long most) => Limit(
        "TR023", "characters of metadata", most, "Leave the program's text out.");

    public static Diagnostic LabelTooLong(RowPlace place, long most) =>
        Limit("TR024", "characters of a label", most, $"{place} has it; shorten it.");

    public static Diagnostic RowTooLong(long line, long most) =>
        Limit("TR025", "bytes of one row", most, "Is a quote left open?") with { Span = At(line) };

    public static Diagnostic RowGroupTooLarge(long most) => Limit(
        "TR026", "rows of one row group", most, "Write the file with smaller row groups.");

    public static Diagnostic RowsBeyondFile(long rows, long bytes) => new(
        "TR027", default,
        string.Create(CultureInfo.InvariantCulture, $"The file claims {rows} rows but has only {bytes} bytes."),
        "It is damaged; write it again.", true);

    public static Diagnostic PageTooLarge(long found, long bytes) => new(
        "TR028", default,
        string.Create(
            CultureInfo.InvariantCulture,
            $"A page of the file claims {found} bytes when unpacked, but has only {bytes} packed."),
        "It is damaged; write it again.", true);

    private static Diagnostic Limit(string code, string what, long most, string hint) => new(
        code, default, string.Create(CultureInfo.InvariantCulture,
            $"The trace has more than {most} {what}, the limit."), hint,
        true);

    private static SourceSpan At(long line) => new((int)Math.Min(line, int.MaxValue), 1, 0);

    private static string Listed(IEnumerable<string> names)
    {
        ImmutableArray<string> all = [.. names.Take(12).Select(Quoted)];
        return all.IsEmpty ? "none" : string.Join(", ", all);
    }

    private static string Quoted(string text)
    {
        string shown = text.Length <= QuotedLengthMax ? text : string.Concat(text.AsSpan(0, QuotedLengthMax), "…");
        return string.Concat(shown.Select(c => char.IsControl(c) || char.IsSurrogate(c) ? '\uFFFD' : c));
    }
}
