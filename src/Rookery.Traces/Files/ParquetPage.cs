namespace Rookery.Traces.Files;

/// <summary>What the header of a Parquet page says.</summary>
/// <param name="HeaderLength">Bytes of the header itself.</param>
/// <param name="Packed">Bytes of the page that follow it.</param>
/// <param name="Unpacked">Bytes of the page when unpacked.</param>
/// <param name="Values">Number of values in a data page; 0 for a dictionary, which the unpacked size bounds.</param>
internal readonly record struct ParquetPage(int HeaderLength, long Packed, long Unpacked, long Values)
{
    /// <summary>Reads a header.</summary>
    /// <exception cref="Notation.InputException">It is damaged.</exception>
    public static ParquetPage Read(ReadOnlySpan<byte> bytes)
    {
        var shaped = new ThriftWalker(bytes);
        ParquetShapes.PageHeader.Check(ref shaped);
        var walker = new ThriftWalker(bytes);
        long packed = -1;
        long unpacked = -1;
        long values = 0;
        int id = 0;
        while (walker.NextField(ref id, out int type))
        {
            switch (id)
            {
                case 2: unpacked = walker.Integer(); break;
                case 3: packed = walker.Integer(); break;
                case 5 or 8 when type == ThriftWalker.Struct: values = FirstInteger(ref walker); break;
                default: walker.Skip(type); break;
            }
        }

        return new(walker.Position, packed, unpacked, values);
    }

    private static long FirstInteger(ref ThriftWalker walker)
    {
        long value = 0;
        int id = 0;
        while (walker.NextField(ref id, out int type))
        {
            if (id == 1)
                value = walker.Integer();
            else
                walker.Skip(type);
        }

        return value;
    }
}
