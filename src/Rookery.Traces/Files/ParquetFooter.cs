namespace Rookery.Traces.Files;

/// <summary>What a Parquet file's footer says about sizes.</summary>
/// <param name="ColumnCount">Number of elements of the schema.</param>
/// <param name="GroupRows">Rows of each row group.</param>
/// <param name="Chunks">Every column of every row group.</param>
internal sealed record ParquetFooter(int ColumnCount, IReadOnlyList<long> GroupRows, IReadOnlyList<ParquetChunk> Chunks)
{
    /// <summary>Reads a footer.</summary>
    /// <exception cref="Notation.InputException">It is damaged.</exception>
    public static ParquetFooter Read(ReadOnlySpan<byte> bytes)
    {
        var shaped = new ThriftWalker(bytes);
        ParquetShapes.Footer.Check(ref shaped);
        var walker = new ThriftWalker(bytes);
        var rows = new List<long>();
        var chunks = new List<ParquetChunk>();
        int columns = 0;
        int id = 0;
        while (walker.NextField(ref id, out int type))
        {
            if (id is 2 or 4 && type == ThriftWalker.List)
            {
                int count = walker.ListHeader(out int elementType);
                columns = id == 2 ? count : columns;
                for (int i = 0; i < count; i++)
                {
                    if (id == 4 && elementType == ThriftWalker.Struct)
                        ReadGroup(ref walker, rows, chunks);
                    else
                        walker.Skip(elementType);
                }
            }
            else
            {
                walker.Skip(type);
            }
        }

        return new(columns, rows, chunks);
    }

    // RowGroup: 1 columns, 3 number of rows.
    private static void ReadGroup(ref ThriftWalker walker, List<long> rows, List<ParquetChunk> chunks)
    {
        long rowCount = 0;
        int id = 0;
        while (walker.NextField(ref id, out int type))
        {
            if (id == 3)
                rowCount = walker.Integer();
            else if (id == 1 && type == ThriftWalker.List)
            {
                int count = walker.ListHeader(out int elementType);
                for (int i = 0; i < count; i++)
                {
                    if (elementType == ThriftWalker.Struct)
                        ReadColumn(ref walker, chunks);
                    else
                        walker.Skip(elementType);
                }
            }
            else
                walker.Skip(type);
        }

        rows.Add(rowCount);
    }

    // ColumnChunk: 3 its metadata.
    private static void ReadColumn(ref ThriftWalker walker, List<ParquetChunk> chunks)
    {
        int id = 0;
        while (walker.NextField(ref id, out int type))
        {
            if (id == 3 && type == ThriftWalker.Struct)
                chunks.Add(ReadChunk(ref walker));
            else
                walker.Skip(type);
        }
    }

    // ColumnMetaData: 5 number of values, 7 packed size, 9 first data page, 11 dictionary page (first where there is
    // one).
    private static ParquetChunk ReadChunk(ref ThriftWalker walker)
    {
        long values = 0;
        long length = 0;
        long data = 0;
        long dictionary = 0;
        int id = 0;
        while (walker.NextField(ref id, out int type))
        {
            switch (id)
            {
                case 5: values = walker.Integer(); break;
                case 7: length = walker.Integer(); break;
                case 9: data = walker.Integer(); break;
                case 11: dictionary = walker.Integer(); break;
                default: walker.Skip(type); break;
            }
        }

        return new(dictionary > 0 && dictionary < data ? dictionary : data, length, values);
    }
}
