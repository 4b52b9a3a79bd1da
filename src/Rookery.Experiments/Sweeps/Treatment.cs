using System.Collections.Immutable;
using Rookery.Simulation;

namespace Rookery.Experiments;

/// <summary>One combination of levels, on which the program is run once for each seed.</summary>
/// <param name="Index">Its place among the treatments of the sweep, from 0.</param>
/// <param name="Label">What a table calls it, such as <c>victim lowest, workers 8</c>.</param>
/// <param name="Levels">The level of each factor, in the order of the factors.</param>
/// <param name="Setup">All choices of its runs but the seed.</param>
public sealed record Treatment(int Index, string Label, ImmutableArray<string> Levels, Setup Setup);
