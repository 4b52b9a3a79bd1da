using System.Collections.Immutable;

namespace Rookery.Drawing;

/// <summary>All runs of one treatment.</summary>
/// <param name="Column">Index of its column.</param>
/// <param name="Series">Index of its series.</param>
/// <param name="Values">The measure of each run, in the order of the seeds; at least one.</param>
/// <param name="Mean">Their mean.</param>
/// <param name="Low">Lower end of the interval of the mean.</param>
/// <param name="High">Upper end of it.</param>
/// <remarks>Equality compares arrays by reference.</remarks>
public sealed record ComparisonGroup(
    int Column, int Series, ImmutableArray<double> Values, double Mean, double Low, double High)
{
    /// <summary>Where each run's point leads, as many as <see cref="Values"/>; empty (default) for nowhere.</summary>
    public ImmutableArray<string> Targets { get; init; } = [];
}
