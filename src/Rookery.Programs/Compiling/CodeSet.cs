using System.Collections.Immutable;
using Rookery.Programs.Data;

namespace Rookery.Programs.Compiling;

/// <summary>The code of all tasks, with the data and the seed that it refers to.</summary>
/// <param name="Definitions">What the codes were made from, in the same order.</param>
/// <param name="Codes">The code of each definition.</param>
/// <param name="Columns">Data columns.</param>
/// <param name="Seed">What <c>pick</c> draws from.</param>
/// <param name="StartDefinition">Where a run begins.</param>
internal sealed record CodeSet(
    ImmutableArray<TaskDefinition> Definitions, Code[] Codes, ImmutableArray<DataColumn> Columns, ulong Seed,
    int StartDefinition);
