namespace Rookery.Lab.Files;

/// <summary>What a file is to the lab.</summary>
internal enum FileKind : byte
{
    /// <summary>Nothing that it can open.</summary>
    Unknown,

    /// <summary>A run, as Parquet.</summary>
    ParquetTrace,

    /// <summary>A run, as CSV.</summary>
    CsvTrace,

    /// <summary>A program.</summary>
    Program,

    /// <summary>Data of a program.</summary>
    Data,

    /// <summary>A deque algorithm.</summary>
    Algorithm,
}
