using System.Collections.Immutable;
using Rookery.Traces.Measuring;

namespace Rookery.Experiments;

/// <summary>What one cell of a sweep came to: one treatment with one seed.</summary>
/// <param name="Cell">Its number in the sweep, from 0.</param>
/// <param name="IsStarved">Whether the run starved.</param>
/// <param name="Values">The value of each measure, in the order of <see cref="MeasureNames.All"/>.</param>
public sealed record CellResult(int Cell, bool IsStarved, ImmutableArray<Ratio> Values);
