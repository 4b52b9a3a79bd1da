namespace Rookery.Traces;

/// <summary>How large a trace file may be: readers refuse more with an error that names the limit.</summary>
/// <remarks>
/// Files come from strangers, so each size that a file can claim has a limit. The defaults admit any run that this
/// program can make. Immutable.
/// </remarks>
public sealed record TraceLimits
{
    /// <summary>The defaults.</summary>
    public static TraceLimits Default { get; } = new();

    /// <summary>Most events; 200 million by default, which take 4.8 GB of memory.</summary>
    public int Rows { get; init; } = 200_000_000;

    /// <summary>Most workers, at most (and by default) 16,777,216.</summary>
    public int Workers { get; init; } = TraceEvent.WorkerMax + 1;

    /// <summary>
    /// How much larger than the number of events a task or worker number may be, 1,000 by default: every task and
    /// worker has an event of its own, so larger numbers are a mistake, and tables by number would be larger than the
    /// file.
    /// </summary>
    public int NumbersAboveRows { get; init; } = 1_000;

    /// <summary>Most columns, 1,000 by default; those that are not ours are skipped.</summary>
    public int Columns { get; init; } = 1_000;

    /// <summary>Most characters in all keys and values of the metadata, 16 Mi by default.</summary>
    public int MetadataLength { get; init; } = 1 << 24;

    /// <summary>Most characters in a label, 10,000 by default.</summary>
    public int LabelLength { get; init; } = 10_000;

    /// <summary>Most bytes in one row of a CSV file, 1 MiB by default.</summary>
    public int CsvRowBytes { get; init; } = 1 << 20;

    /// <summary>Most rows in one row group of a Parquet file, 16 Mi by default: a group is read as a whole.</summary>
    public int RowGroupRows { get; init; } = 1 << 24;

    /// <summary>
    /// Most rows for each byte of a Parquet file, 50 by default, beyond the first 100,000 rows: a small file cannot
    /// make a reader set aside memory for rows that it does not hold.
    /// </summary>
    public int RowsPerByte { get; init; } = 50;
}
