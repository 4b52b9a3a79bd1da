using System.Buffers.Binary;
using Rookery.Images;

namespace Rookery.Tests.Images;

public sealed class WoffFontTests
{
    [Fact]
    public void ToSfnt_NoFont_IsRefused() =>
        Assert.Throws<InvalidDataException>(() => WoffFont.ToSfnt("<svg/>"u8));

    [Fact]
    public void ToSfnt_CutOffAnywhere_IsRefusedAndNothingElse()
    {
        byte[] whole = Font("IBMPlexMono-Regular.woff");
        for (int length = 0; length < whole.Length; length += 997)
        {
            byte[] part = whole[..length];
            Assert.Throws<InvalidDataException>(() => WoffFont.ToSfnt(part));
        }
    }

    [Theory]
    [InlineData("IBMPlexSans-Regular.woff")]
    [InlineData("IBMPlexSans-SemiBold.woff")]
    [InlineData("IBMPlexMono-Regular.woff")]
    public void ToSfnt_ShippedFont_EachTableHasTheChecksumThatTheFileNames(string name)
    {
        byte[] sfnt = WoffFont.ToSfnt(Font(name));

        int tables = BinaryPrimitives.ReadUInt16BigEndian(sfnt.AsSpan(4));
        Assert.InRange(tables, 9, 40);
        for (int i = 0; i < tables; i++)
        {
            ReadOnlySpan<byte> record = sfnt.AsSpan(12 + (i * 16), 16);
            if (record[..4].SequenceEqual("head"u8))
                continue; // its checksum is counted with a field of zero inside: OpenType, "Calculating Checksums"
            int offset = (int)BinaryPrimitives.ReadUInt32BigEndian(record[8..]);
            int length = (int)BinaryPrimitives.ReadUInt32BigEndian(record[12..]);
            Assert.Equal(BinaryPrimitives.ReadUInt32BigEndian(record[4..]), Checksum(sfnt.AsSpan(offset, length)));
        }
    }

    private static uint Checksum(ReadOnlySpan<byte> table)
    {
        uint sum = 0;
        Span<byte> word = stackalloc byte[4];
        for (int i = 0; i < table.Length; i += 4)
        {
            word.Clear();
            table[i..Math.Min(i + 4, table.Length)].CopyTo(word);
            sum = unchecked(sum + BinaryPrimitives.ReadUInt32BigEndian(word));
        }

        return sum;
    }

    private static byte[] Font(string name)
    {
        using Stream stream = typeof(WoffFont).Assembly.GetManifestResourceStream(name)!;
        byte[] bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }
}
