using System.Collections.Immutable;
using Rookery.Experiments.Statistics;
using Rookery.Traces.Measuring;

namespace Rookery.Experiments.Claims;

/// <summary>A claim that is decided in portions, for a caller that has other things to do in between.</summary>
/// <remarks>Mutable, for one thread. The result is that of <see cref="Claim.Decide"/>, whatever the portions.</remarks>
public sealed class ClaimDecision
{
    private readonly Claim _claim;
    private readonly ImmutableArray<CellResult> _cells;
    private readonly Sample? _first;
    private readonly Sample? _second;
    private readonly Sample? _difference;
    private readonly RatioBootstrap? _bootstrap;

    /// <summary>Takes the results of the cells.</summary>
    /// <param name="claim">The claim.</param>
    /// <param name="cells">Cells of <see cref="Claim.ToSweep"/>, in any order, whole pairs.</param>
    public ClaimDecision(Claim claim, IEnumerable<CellResult> cells)
    {
        (_claim, _cells) = (claim, [.. cells.OrderBy(c => c.Cell)]);
        int measure = MeasureNames.All.IndexOf(claim.Measure);
        if (_cells.Any(c => !c.Values[measure].HasValue))
            return;
        _first = new Sample(_cells.Where(c => c.Cell % 2 == 0).Select(c => c.Values[measure].ToDouble()));
        _second = new Sample(_cells.Where(c => c.Cell % 2 == 1).Select(c => c.Values[measure].ToDouble()));
        _difference = new Sample(_first.Values.Zip(_second.Values, (a, b) => b - a));
        _bootstrap = _first.Mean == 0 ? null : new(_difference, _first);
    }

    /// <summary>Whether nothing is left but <see cref="Finish"/>.</summary>
    public bool IsOver => _bootstrap is null or { IsOver: true };

    /// <summary>Draws some more resamples for the interval of the share.</summary>
    /// <param name="resamples">How many at most.</param>
    public void Advance(int resamples) => _bootstrap?.Advance(resamples);

    /// <summary>The verdict. Does what is left first.</summary>
    public ClaimResult Finish() => _first is null
        ? ClaimResult.WithoutComparison(_claim, _cells)
        : ClaimResult.Of(
            _claim, _first, _second!, _difference!, _bootstrap?.ToInterval(_claim.Rule.Confidence));
}
