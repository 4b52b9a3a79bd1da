using System.Collections.Immutable;
using Rookery.Experiments.Statistics;
using Rookery.Traces.Measuring;

namespace Rookery.Experiments.Claims;

/// <summary>
/// What the experiment found: both samples, the effect with its interval, and the verdict.
/// </summary>
/// <remarks><see cref="Words.ClaimWords"/> says it.</remarks>
public sealed record ClaimResult
{
    /// <summary>The claim.</summary>
    public required Claim Claim { get; init; }

    /// <summary>The verdict.</summary>
    public required Verdict Verdict { get; init; }

    /// <summary>The measure on each seed with the first treatment; null when the runs cannot be compared.</summary>
    public Sample? First { get; init; }

    /// <summary>The measure on each seed with the second treatment.</summary>
    public Sample? Second { get; init; }

    /// <summary>Second minus first, seed by seed.</summary>
    public Sample? Difference { get; init; }

    /// <summary>The interval of the mean difference, second minus first, in the measure's unit (Student).</summary>
    public Interval? DifferenceInterval { get; init; }

    /// <summary>
    /// The interval of the mean difference over the first mean (bootstrap); null where the first mean is 0.
    /// </summary>
    public Interval? ShareInterval { get; init; }

    /// <summary>The mean difference over the first mean; null where that is 0.</summary>
    public double? Share => First is null || First.Mean == 0 ? null : Difference!.Mean / First.Mean;

    /// <summary>Why there is nothing to compare; null when there is.</summary>
    public Incomparable? Incomparable { get; init; }

    internal static ClaimResult Of(
        Claim claim, Sample first, Sample second, Sample difference, Interval? asShare)
    {
        var inUnits = Interval.OfMean(difference, claim.Rule.Confidence);
        Interval? decisive = claim.Rule.Least.IsShare ? asShare : inUnits;
        return new()
        {
            Claim = claim,
            First = first,
            Second = second,
            Difference = difference,
            DifferenceInterval = inUnits,
            ShareInterval = asShare,
            Verdict = decisive is { } interval ? claim.Rule.Decide(Directed(claim, interval)) : Verdict.Undecided,
        };
    }

    internal static ClaimResult WithoutComparison(Claim claim, ImmutableArray<CellResult> cells)
    {
        int measure = MeasureNames.All.IndexOf(claim.Measure);
        return new()
        {
            Claim = claim,
            Verdict = Verdict.Undecided,
            Incomparable = new(
                cells.Count(c => c.IsStarved), cells.Count(c => !c.Values[measure].HasValue), cells.Length),
        };
    }

    // Turned so that positive is as claimed.
    private static Interval Directed(Claim claim, Interval second) => claim.Rule.Direction == Direction.Lower
        ? new(-second.High, -second.Low, second.Confidence)
        : second;
}
