using Rookery.Notation;

namespace Rookery.Traces.Files;

/// <summary>Looks at a Parquet file's own account of itself before the library acts on it.</summary>
/// <remarks>
/// The library sets aside memory as the file says, and follows nested structures as deep as they go: a few damaged
/// bytes could ask for gigabytes or end the process. So the footer and the headers of all pages are walked here first,
/// with nothing believed: depth is bounded, each field is of its kind, every count and length must fit into the bytes
/// that are there, and what a page unpacks to must be in proportion to its size. Source of the layout: the Apache
/// Parquet format specification (file layout, <c>PageHeader</c>,
/// <c>FileMetaData</c>) and the Thrift compact protocol.
/// </remarks>
internal static class ParquetGuard
{
    /// <summary>Rows that any file may claim.</summary>
    private const long RowsFree = 100_000;

    /// <summary>Bytes that any page may unpack to.</summary>
    private const long UnpackedFree = 1 << 20;

    /// <summary>How much larger a page may be unpacked than packed.</summary>
    private const long UnpackedPerByte = 1_000;

    /// <summary>Bytes that each value may add: a long run of one value packs into next to nothing.</summary>
    private const long UnpackedPerValue = 64;

    /// <summary>Bytes that no page may pass.</summary>
    private const long UnpackedMax = 1 << 30;

    private const int FooterBytesMax = 1 << 28;
    private const int HeaderBytesMax = 1 << 16;
    private const int TailLength = 8;

    private static ReadOnlySpan<byte> Magic => "PAR1"u8;

    /// <summary>Walks a file.</summary>
    /// <param name="stream">The file; its position is changed.</param>
    /// <param name="limits">The limits.</param>
    /// <exception cref="InputException">The file cannot be what it says.</exception>
    public static void Check(Stream stream, TraceLimits limits)
    {
        long length = stream.Length;
        byte[] footer = ReadFooter(stream, length);
        ParquetFooter parts = ParquetFooter.Read(footer);
        if (parts.ColumnCount > limits.Columns)
            throw new InputException(TraceErrors.TooManyColumns(limits.Columns));
        CheckRows(parts, length, limits);
        var buffer = new byte[HeaderBytesMax];
        foreach (ParquetChunk chunk in parts.Chunks)
            CheckPages(stream, chunk, length, buffer);
    }

    private static byte[] ReadFooter(Stream stream, long length)
    {
        Span<byte> tail = stackalloc byte[TailLength];
        Span<byte> head = stackalloc byte[4];
        if (length < TailLength + 4)
            throw Unreadable("it is too short");
        stream.Position = 0;
        stream.ReadExactly(head);
        stream.Position = length - TailLength;
        stream.ReadExactly(tail);
        if (!head.SequenceEqual(Magic) || !tail[4..].SequenceEqual(Magic))
            throw Unreadable("it does not begin and end with PAR1");
        int footerLength = System.Buffers.Binary.BinaryPrimitives.ReadInt32LittleEndian(tail);
        if (footerLength <= 0 || footerLength > Math.Min(FooterBytesMax, length - TailLength - 4))
            throw Unreadable("its footer is longer than the file");
        byte[] footer = new byte[footerLength];
        stream.Position = length - TailLength - footerLength;
        stream.ReadExactly(footer);
        return footer;
    }

    private static void CheckRows(ParquetFooter parts, long length, TraceLimits limits)
    {
        Int128 rows = 0;
        foreach (long groupRows in parts.GroupRows)
        {
            if (groupRows < 0)
                throw Unreadable("a row group has fewer than 0 rows");
            if (groupRows > limits.RowGroupRows)
                throw new InputException(TraceErrors.RowGroupTooLarge(limits.RowGroupRows));
            rows += groupRows;
        }

        if (rows > limits.Rows)
            throw new InputException(TraceErrors.TooManyRows(limits.Rows));
        if (rows > RowsFree + ((Int128)length * limits.RowsPerByte))
            throw new InputException(TraceErrors.RowsBeyondFile((long)rows, length));
        // Columns that are not ours may hold lists, but no more values than rows that the file could have.
        if (parts.Chunks.Any(c => c.Values < 0 || c.Values > limits.RowGroupRows
            || c.Values > RowsFree + ((Int128)length * limits.RowsPerByte)))
            throw Unreadable("a column claims more values than the file can hold");
    }

    private static void CheckPages(Stream stream, ParquetChunk chunk, long length, byte[] buffer)
    {
        if (chunk.Start < 0 || chunk.Length < 0 || chunk.Start > length - chunk.Length)
            throw Unreadable("a column lies beyond the end of the file");
        long end = chunk.Start + chunk.Length;
        for (long at = chunk.Start; at < end;)
        {
            int available = (int)Math.Min(buffer.Length, end - at);
            stream.Position = at;
            stream.ReadExactly(buffer, 0, available);
            var page = ParquetPage.Read(buffer.AsSpan(0, available));
            if (page.Packed < 0 || page.Unpacked < 0 || page.Packed > end - at - page.HeaderLength)
                throw Unreadable("a page is longer than its column");
            if (page.Values < 0 || page.Values > chunk.Values)
                throw Unreadable("a page has more values than its column");
            long fair = UnpackedFree + (page.Packed * UnpackedPerByte) + (page.Values * UnpackedPerValue);
            if (page.Unpacked > Math.Min(fair, UnpackedMax))
                throw new InputException(TraceErrors.PageTooLarge(page.Unpacked, page.Packed));
            at += page.HeaderLength + page.Packed;
        }
    }

    private static InputException Unreadable(string why) => new(TraceErrors.NotParquet(why));
}
