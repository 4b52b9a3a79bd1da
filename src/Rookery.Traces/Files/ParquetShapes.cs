namespace Rookery.Traces.Files;

/// <summary>What the structures of a Parquet file hold, by identifier.</summary>
/// <remarks>
/// Source: <c>parquet.thrift</c> of the Apache Parquet format specification. Only kinds of values matter here: a reader
/// that finds a number where it expects text would take the number for a length. Encrypted files have fields that are
/// not in these shapes.
/// </remarks>
internal static class ParquetShapes
{
    private static readonly ThriftShape Nothing = new();

    private static readonly ThriftShape KeyValue = new(Text(1), Text(2));

    private static readonly ThriftShape Statistics = new(
        Text(1), Text(2), Whole(3), Whole(4), Text(5), Text(6), Truth(7), Truth(8));

    private static readonly ThriftShape TimeUnit = new(Part(1, Nothing), Part(2, Nothing), Part(3, Nothing));

    private static readonly ThriftShape TimeType = new(Truth(1), Part(2, TimeUnit));

    private static readonly ThriftShape LogicalType = new(
        Part(1, Nothing), Part(2, Nothing), Part(3, Nothing), Part(4, Nothing),
        Part(5, new ThriftShape(Whole(1), Whole(2))), Part(6, Nothing), Part(7, TimeType), Part(8, TimeType),
        Part(10, new ThriftShape(Small(1), Truth(2))), Part(11, Nothing), Part(12, Nothing), Part(13, Nothing),
        Part(14, Nothing), Part(15, Nothing), Part(16, new ThriftShape(Small(1))), Part(17, new ThriftShape(Text(1))),
        Part(18, new ThriftShape(Text(1), Whole(2))));

    private static readonly ThriftShape SchemaElement = new(
        Whole(1), Whole(2), Whole(3), Text(4), Whole(5), Whole(6), Whole(7), Whole(8), Whole(9), Part(10, LogicalType));

    private static readonly ThriftShape Encodings = new(Whole(1), Whole(2), Whole(3));

    private static readonly ThriftShape Sizes = new(Whole(1), Wholes(2), Wholes(3));

    private static readonly ThriftShape Box = new(
        Real(1), Real(2), Real(3), Real(4), Real(5), Real(6), Real(7), Real(8));

    private static readonly ThriftShape Geography = new(Part(1, Box), Wholes(2));

    private static readonly ThriftShape ColumnMetadata = new(
        Whole(1), Wholes(2), new ThriftField(3, ThriftSort.List, null, ThriftSort.Binary), Whole(4), Whole(5), Whole(6),
        Whole(7), Parts(8, KeyValue), Whole(9), Whole(10), Whole(11), Part(12, Statistics), Parts(13, Encodings),
        Whole(14), Whole(15), Part(16, Sizes), Part(17, Geography));

    private static readonly ThriftShape ColumnChunk = new(
        Text(1), Whole(2), Part(3, ColumnMetadata), Whole(4), Whole(5), Whole(6), Whole(7));

    private static readonly ThriftShape SortingColumn = new(Whole(1), Truth(2), Truth(3));

    private static readonly ThriftShape RowGroup = new(
        Parts(1, ColumnChunk), Whole(2), Whole(3), Parts(4, SortingColumn), Whole(5), Whole(6), Whole(7));

    /// <summary>The footer of a file.</summary>
    public static ThriftShape Footer { get; } = new(
        Whole(1), Parts(2, SchemaElement), Whole(3), Parts(4, RowGroup), Parts(5, KeyValue), Text(6),
        Parts(7, new ThriftShape(Part(1, Nothing))));

    /// <summary>The header of a page.</summary>
    public static ThriftShape PageHeader { get; } = new(
        Whole(1), Whole(2), Whole(3), Whole(4),
        Part(5, new ThriftShape(Whole(1), Whole(2), Whole(3), Whole(4), Part(5, Statistics))),
        Part(6, Nothing),
        Part(7, new ThriftShape(Whole(1), Whole(2), Truth(3))),
        Part(8, new ThriftShape(
            Whole(1), Whole(2), Whole(3), Whole(4), Whole(5), Whole(6), Truth(7), Part(8, Statistics))));

    private static ThriftField Truth(int id) => new(id, ThriftSort.Truth);

    private static ThriftField Small(int id) => new(id, ThriftSort.Small);

    private static ThriftField Whole(int id) => new(id, ThriftSort.Integer);

    private static ThriftField Real(int id) => new(id, ThriftSort.Double);

    private static ThriftField Text(int id) => new(id, ThriftSort.Binary);

    private static ThriftField Wholes(int id) => new(id, ThriftSort.List, null, ThriftSort.Integer);

    private static ThriftField Part(int id, ThriftShape shape) => new(id, ThriftSort.Structure, shape);

    private static ThriftField Parts(int id, ThriftShape shape) => new(id, ThriftSort.List, shape);
}
