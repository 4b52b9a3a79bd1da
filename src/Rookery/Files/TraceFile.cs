using System.Collections.Immutable;
using Rookery.Notation;
using Rookery.Traces;

namespace Rookery.Files;

/// <summary>Traces on disk: Parquet or CSV, by the ending of the name.</summary>
internal static class TraceFile
{
    /// <summary>The endings.</summary>
    public static ImmutableArray<string> Endings { get; } = [".parquet", ".csv"];

    /// <summary>Whether a name has the ending of a trace.</summary>
    public static bool IsTrace(string path) => Endings.Contains(EndingOf(path));

    /// <summary>Refuses a name that a trace cannot be written to, before any work is done for it.</summary>
    /// <exception cref="InputException">Its ending is none of ours.</exception>
    public static void CheckName(string path)
    {
        if (!IsTrace(path))
            throw new InputException(AppErrors.BadEnding(path, "A trace", Endings));
    }

    /// <summary>Reads a trace.</summary>
    /// <exception cref="InputException">There is none, it is damaged, or larger than a limit.</exception>
    public static Trace Read(string path)
    {
        CheckName(path);
        if (!File.Exists(path))
            throw new InputException(MissingFile.At(path));
        if (EndingOf(path) == ".parquet")
            return ReadParquet(path).GetAwaiter().GetResult();
        using FileStream stream = Open(path);
        return TraceCsv.Read(stream);
    }

    /// <summary>Writes a trace, whole or not at all.</summary>
    public static void Write(string path, Trace trace)
    {
        CheckName(path);
        WholeFile.Write(path, stream =>
        {
            if (EndingOf(path) == ".csv")
                TraceCsv.Write(trace, stream);
            else
                TraceParquet.WriteAsync(trace, stream).GetAwaiter().GetResult();
        });
    }

    private static async Task<Trace> ReadParquet(string path)
    {
        await using FileStream stream = Open(path);
        return await TraceParquet.ReadAsync(stream);
    }

    private static FileStream Open(string path) =>
        new(path, FileMode.Open, FileAccess.Read, FileShare.Read, 1 << 16);

    private static string EndingOf(string path) => Path.GetExtension(path).ToLowerInvariant();
}
