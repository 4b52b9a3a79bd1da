namespace Rookery.Lab.Files;

/// <summary>Fetches what the lab left out of its first load, since only some readers need it.</summary>
internal interface ILabParts
{
    /// <summary>Makes Parquet files readable and writable.</summary>
    /// <returns>Whether it is so; not when the network is away and the part was never fetched.</returns>
    Task<bool> LoadParquetAsync();
}
