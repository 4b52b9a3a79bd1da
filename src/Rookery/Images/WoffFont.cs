using System.Buffers.Binary;
using System.IO.Compression;

namespace Rookery.Images;

/// <summary>Unpacks a font from Web Open Font Format 1.0 into the plain form (sfnt) that is loaded.</summary>
/// <remarks>
/// The fonts' licence reserves their name for unchanged files, so the files lie in the repository as they were
/// published and are unpacked in memory. Form: "WOFF File Format 1.0", W3C Recommendation, 13 December 2012, sections
/// 3 to 5; sfnt: the header and table records of the OpenType specification, "Organization of an OpenType Font".
/// </remarks>
internal static class WoffFont
{
    private const uint Signature = 0x774F4646;
    private const int WoffHeader = 44;
    private const int WoffRecord = 20;
    private const int SfntHeader = 12;
    private const int SfntRecord = 16;

    /// <summary>No table of a font that we take is larger: 16 MiB.</summary>
    private const int TableMax = 1 << 24;

    /// <summary>The same font as sfnt.</summary>
    /// <exception cref="InvalidDataException">It is no WOFF 1.0 file, or is damaged.</exception>
    public static byte[] ToSfnt(ReadOnlySpan<byte> woff)
    {
        if (woff.Length < WoffHeader || BinaryPrimitives.ReadUInt32BigEndian(woff) != Signature)
            throw new InvalidDataException("This is no WOFF 1.0 font.");
        int tables = BinaryPrimitives.ReadUInt16BigEndian(woff[12..]);
        if (tables == 0 || woff.Length < WoffHeader + (tables * WoffRecord))
            throw new InvalidDataException("The font's list of tables is cut off.");

        using var sfnt = new MemoryStream();
        sfnt.Write(Header(woff[4..8], tables));
        sfnt.Write(new byte[tables * SfntRecord]);
        Span<byte> record = stackalloc byte[SfntRecord];
        for (int i = 0; i < tables; i++)
        {
            ReadOnlySpan<byte> entry = woff.Slice(WoffHeader + (i * WoffRecord), WoffRecord);
            byte[] table = Unpack(woff, entry);
            entry[..4].CopyTo(record);
            entry[16..20].CopyTo(record[4..]);
            BinaryPrimitives.WriteUInt32BigEndian(record[8..], (uint)sfnt.Length);
            BinaryPrimitives.WriteUInt32BigEndian(record[12..], (uint)table.Length);
            sfnt.Position = SfntHeader + (i * SfntRecord);
            sfnt.Write(record);
            sfnt.Position = sfnt.Length;
            sfnt.Write(table);
            sfnt.Write(new byte[-table.Length & 3]);
        }

        return sfnt.ToArray();
    }

    private static byte[] Header(ReadOnlySpan<byte> flavor, int tables)
    {
        // searchRange and its two companions describe a binary search over the records; some readers check them.
        int log = int.Log2(tables);
        byte[] header = new byte[SfntHeader];
        flavor.CopyTo(header);
        BinaryPrimitives.WriteUInt16BigEndian(header.AsSpan(4), (ushort)tables);
        BinaryPrimitives.WriteUInt16BigEndian(header.AsSpan(6), (ushort)(16 << log));
        BinaryPrimitives.WriteUInt16BigEndian(header.AsSpan(8), (ushort)log);
        BinaryPrimitives.WriteUInt16BigEndian(header.AsSpan(10), (ushort)((tables * 16) - (16 << log)));
        return header;
    }

    private static byte[] Unpack(ReadOnlySpan<byte> woff, ReadOnlySpan<byte> entry)
    {
        uint offset = BinaryPrimitives.ReadUInt32BigEndian(entry[4..]);
        uint packed = BinaryPrimitives.ReadUInt32BigEndian(entry[8..]);
        uint plain = BinaryPrimitives.ReadUInt32BigEndian(entry[12..]);
        if ((long)offset + packed > woff.Length || packed > plain || plain > TableMax)
            throw new InvalidDataException("A table of the font lies outside of its file.");
        byte[] bytes = woff.Slice((int)offset, (int)packed).ToArray();
        if (packed == plain)
            return bytes;

        byte[] table = new byte[plain];
        using var source = new MemoryStream(bytes);
        using var inflated = new ZLibStream(source, CompressionMode.Decompress);
        if (inflated.ReadAtLeast(table, table.Length, throwOnEndOfStream: false) < table.Length)
            throw new InvalidDataException("A table of the font is shorter than its file says.");
        return table;
    }
}
