using System.IO.Compression;
using Parquet;
using Rookery.Notation;
using Rookery.Traces.Files;

namespace Rookery.Traces;

/// <summary>Traces as Apache Parquet: a row for each event, the run's inputs as key-value metadata.</summary>
/// <remarks>
/// The form is in docs/trace.md. Reading accepts columns in any order, of any width of integer, with or without nulls,
/// in any codec that the library knows, and columns that are not ours; writing gives the same bytes for the same trace:
/// Zstandard, row groups of <see cref="RowGroupLength"/> rows, dictionaries for the texts.
/// </remarks>
public static class TraceParquet
{
    /// <summary>Rows in a row group as written: some 5 MB of memory while it is written or read.</summary>
    public const int RowGroupLength = Trace.ChunkLength;

    // The default level of the library takes fifty times as long for a tenth less (docs/performance.md).
    private const CompressionLevel Level = CompressionLevel.Fastest;

    /// <summary>Reads a trace.</summary>
    /// <param name="stream">The file's bytes; must be seekable; stays open.</param>
    /// <param name="limits">How much is read at the most; the defaults when null.</param>
    /// <param name="pause">
    /// Awaited after each column of a row group and every some thousand rows, so that a page with one thread can do
    /// something else in between; null (default) for no pause.
    /// </param>
    /// <param name="cancellation">Stops reading.</param>
    /// <exception cref="InputException">The file is no trace, or larger than a limit.</exception>
    /// <exception cref="ArgumentException">The stream cannot seek: the format is read from its end.</exception>
    public static async Task<Trace> ReadAsync(
        Stream stream,
        TraceLimits? limits = null,
        Func<ValueTask>? pause = null,
        CancellationToken cancellation = default)
    {
        if (!stream.CanSeek)
            throw new ArgumentException("Parquet is read from its end: the stream must be seekable.", nameof(stream));
        limits ??= TraceLimits.Default;
        try
        {
            ParquetGuard.Check(stream, limits);
            stream.Position = 0;
            ParquetReader reader = await ParquetReader
                .CreateAsync(stream, new ParquetOptions { TreatByteArrayAsString = true }, true, cancellation)
                .ConfigureAwait(false);
            await using (reader.ConfigureAwait(false))
                return await ReadAsync(reader, limits, pause, cancellation).ConfigureAwait(false);
        }
        catch (Exception e) when (e is not (InputException or OperationCanceledException))
        {
            // The library answers a damaged file with whatever its decoders run into; here all of it becomes one error.
            throw new InputException(TraceErrors.NotParquet(e.GetType().Name));
        }
    }

    /// <summary>Writes a trace.</summary>
    /// <param name="trace">The trace.</param>
    /// <param name="stream">Gets the bytes; stays open.</param>
    /// <param name="cancellation">Stops writing; the stream then holds a part of the file.</param>
    /// <exception cref="ArgumentException">A name in the inputs has a space, colon or control character.</exception>
    public static async Task WriteAsync(Trace trace, Stream stream, CancellationToken cancellation = default)
    {
        var columns = new ParquetColumns();
        ParquetWriter writer = await ParquetWriter
            .CreateAsync(
                columns.Schema, stream,
                new ParquetOptions { CompressionMethod = CompressionMethod.Zstd, CompressionLevel = Level },
                false, cancellation)
            .ConfigureAwait(false);
        await using (writer.ConfigureAwait(false))
        {
            writer.CustomMetadata = TraceMetadata.Of(trace.Inputs).ToDictionary(p => p.Key, p => p.Value);
            var labels = new LabelColumn(trace);
            for (int start = 0; start < trace.Count; start += RowGroupLength)
            {
                cancellation.ThrowIfCancellationRequested();
                columns.Fill(trace, start, Math.Min(RowGroupLength, trace.Count - start), labels);
                using ParquetRowGroupWriter group = writer.CreateRowGroup();
                await columns.WriteAsync(group, cancellation).ConfigureAwait(false);
                group.CompleteValidate();
            }
        }
    }

    private static async Task<Trace> ReadAsync(
        ParquetReader reader, TraceLimits limits, Func<ValueTask>? pause, CancellationToken cancellation)
    {
        var metadata = new TraceMetadata();
        foreach ((string key, string value) in reader.CustomMetadata)
            metadata.Add(key, value ?? "", limits);
        var source = new ParquetSource(reader.Schema, limits);
        var assembler = new TraceAssembler(limits);
        for (int i = 0; i < reader.RowGroupCount; i++)
        {
            cancellation.ThrowIfCancellationRequested();
            using ParquetRowGroupReader group = reader.OpenRowGroupReader(i);
            await source.ReadAsync(group, assembler, pause, cancellation).ConfigureAwait(false);
        }

        return assembler.Build(metadata);
    }
}
