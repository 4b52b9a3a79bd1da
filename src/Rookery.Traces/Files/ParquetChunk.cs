namespace Rookery.Traces.Files;

/// <summary>Where one column of one row group lies in a Parquet file, as the footer says.</summary>
/// <param name="Start">First byte.</param>
/// <param name="Length">Number of bytes.</param>
/// <param name="Values">Number of values, those that are null included.</param>
internal readonly record struct ParquetChunk(long Start, long Length, long Values);
