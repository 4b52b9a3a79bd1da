using System.Text;

namespace Rookery.Lab.Files;

/// <summary>What a file is to the lab, by its name and, where names do not tell, by its first line.</summary>
internal static class FileKinds
{
    /// <summary>The endings of files that can be opened, as a dialog wants them.</summary>
    public const string Accepted = ".parquet,.csv,.fj,.dq";

    private static readonly string[] TraceColumns = ["time", "worker", "kind"];

    /// <summary>The kind of a file.</summary>
    public static FileKind Of(string name, ReadOnlySpan<byte> bytes) =>
        Path.GetExtension(name).ToLowerInvariant() switch
        {
            ".parquet" => FileKind.ParquetTrace,
            ".fj" => FileKind.Program,
            ".dq" => FileKind.Algorithm,
            ".csv" => HasTraceColumns(bytes) ? FileKind.CsvTrace : FileKind.Data,
            _ => FileKind.Unknown,
        };

    // A trace has its columns in the first line that is no remark (docs/trace.md).
    private static bool HasTraceColumns(ReadOnlySpan<byte> bytes)
    {
        if (bytes.StartsWith("\uFEFF"u8))
            bytes = bytes[3..];
        while (bytes.Length > 0 && bytes[0] == (byte)'#')
        {
            int end = bytes.IndexOf((byte)'\n');
            bytes = end < 0 ? [] : bytes[(end + 1)..];
        }

        int first = bytes.IndexOfAny((byte)'\n', (byte)'\r');
        string[] columns = [.. Encoding.UTF8.GetString(first < 0 ? bytes : bytes[..first]).Split(',')
            .Select(column => column.Trim().Trim('"'))];
        return TraceColumns.All(column => columns.Contains(column));
    }
}
