using System.Collections.Immutable;

namespace Rookery.Lessons.Blocks;

/// <summary>A table that a block made.</summary>
/// <param name="Caption">What it tells.</param>
/// <param name="Headers">Heads of its columns.</param>
/// <param name="Rows">Its cells, as text.</param>
/// <param name="NumberColumns">Columns that are set right, from 0.</param>
public sealed record BlockTable(
    string Caption, ImmutableArray<string> Headers, ImmutableArray<ImmutableArray<string>> Rows,
    ImmutableArray<int> NumberColumns);
