using System.Collections.Immutable;

namespace Rookery.Drawing;

/// <summary>The runs of one scheduler or setting.</summary>
/// <param name="Name">What it is called in the figure.</param>
/// <param name="Runs">In any order; several with the same number of workers are different seeds.</param>
/// <remarks>Equality compares arrays by reference.</remarks>
public sealed record SpeedUpSeries(string Name, ImmutableArray<SpeedUpRun> Runs);
