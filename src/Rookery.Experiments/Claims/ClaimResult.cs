using System.Collections.Immutable;
using System.Globalization;
using Rookery.Experiments.Statistics;
using Rookery.Traces.Measuring;

namespace Rookery.Experiments.Claims;

/// <summary>
/// What the experiment found: both samples, the effect with its interval, and the verdict with its reason.
/// </summary>
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

    /// <summary>Why, in a sentence or two with the numbers.</summary>
    public required string Reason { get; init; }

    internal static ClaimResult Of(
        Claim claim, Sample first, Sample second, Sample difference, Interval? asShare)
    {
        var inUnits = Interval.OfMean(difference, claim.Rule.Confidence);
        Interval? decisive = claim.Rule.Least.IsShare ? asShare : inUnits;
        var result = new ClaimResult
        {
            Claim = claim,
            First = first,
            Second = second,
            Difference = difference,
            DifferenceInterval = inUnits,
            ShareInterval = asShare,
            Verdict = decisive is { } interval ? claim.Rule.Decide(Directed(claim, interval)) : Verdict.Undecided,
            Reason = "",
        };
        return result with { Reason = result.Explain() };
    }

    internal static ClaimResult Incomparable(Claim claim, ImmutableArray<CellResult> cells)
    {
        int starved = cells.Count(c => c.IsStarved);
        int missing = cells.Count(c => !c.Values[MeasureNames.All.IndexOf(claim.Measure)].HasValue);
        string why = starved > 0
            ? $"{starved:N0} of {cells.Length:N0} runs starved and never came to their end"
            : $"{missing:N0} of {cells.Length:N0} runs have no {claim.Measure.Name}";
        return new() { Claim = claim, Verdict = Verdict.Undecided, Reason = $"The runs cannot be compared: {why}." };
    }

    // Turned so that positive is as claimed.
    private static Interval Directed(Claim claim, Interval second) => claim.Rule.Direction == Direction.Lower
        ? new(-second.High, -second.Low, second.Confidence)
        : second;

    private string Explain()
    {
        string name = Claim.Measure.Name;
        string means = string.Create(
            CultureInfo.InvariantCulture,
            $"The mean {name} is {Number(First!.Mean)} with {Claim.First.Label} and {Number(Second!.Mean)} with "
            + $"{Claim.Second.Label}");
        Interval units = DifferenceInterval!.Value;
        string effect = string.Create(
            CultureInfo.InvariantCulture,
            $", a difference of {Signed(Difference!.Mean)} ({Confident(units)} from {Signed(units.Low)} to "
            + $"{Signed(units.High)})");
        string share = Share is { } s && ShareInterval is { } i
            ? $", or {Percent(s)} ({Percent(i.Low)} to {Percent(i.High)})"
            : "";
        string varies = Difference.StandardDeviation == 0 && Difference.Count > 1
            ? " The difference is the same on every seed, so the interval has no width."
            : "";
        return $"{means}{effect}{share}.{varies}";
    }

    private static string Confident(Interval interval) =>
        string.Create(CultureInfo.InvariantCulture, $"{interval.Confidence * 100:0.#} % interval");

    // Four significant digits say more than the experiment knows; whole numbers keep all of theirs.
    private static string Number(double value) => Math.Abs(value) >= 1000
        ? value.ToString("N0", CultureInfo.InvariantCulture)
        : value.ToString(Math.Abs(value) >= 10 ? "0.##" : "0.####", CultureInfo.InvariantCulture);

    private static string Signed(double value) => value > 0 ? "+" + Number(value) : Number(value);

    private static string Percent(double share) =>
        string.Create(CultureInfo.InvariantCulture, $"{(share > 0 ? "+" : "")}{share * 100:0.0} %");
}
