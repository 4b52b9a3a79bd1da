using System.Collections.Immutable;
using MathNet.Numerics.Statistics;

namespace Rookery.Experiments.Statistics;

/// <summary>Numbers of one kind, one for each seed, and what describes them.</summary>
/// <remarks>Immutable. Computed by a numerics library; checked against certified data sets in the tests.</remarks>
public sealed class Sample
{
    private readonly double[] _sorted;

    /// <summary>Takes the numbers.</summary>
    /// <param name="values">At least one, none of them NaN.</param>
    /// <exception cref="ArgumentException">There is none, or one is no number.</exception>
    public Sample(IEnumerable<double> values)
    {
        Values = [.. values];
        if (Values.IsEmpty || Values.Any(double.IsNaN))
            throw new ArgumentException("A sample is at least one number.", nameof(values));
        _sorted = [.. Values.Order()];
        Mean = ArrayStatistics.Mean([.. Values]);
        StandardDeviation = Values.Length < 2 ? 0 : ArrayStatistics.StandardDeviation([.. Values]);
    }

    /// <summary>The numbers, in the order of the seeds.</summary>
    public ImmutableArray<double> Values { get; }

    /// <summary>How many.</summary>
    public int Count => Values.Length;

    /// <summary>The arithmetic mean.</summary>
    public double Mean { get; }

    /// <summary>The standard deviation with n - 1; 0 for one number.</summary>
    public double StandardDeviation { get; }

    /// <summary>The least.</summary>
    public double Min => _sorted[0];

    /// <summary>The largest.</summary>
    public double Max => _sorted[^1];

    /// <summary>The middle number, or half the sum of the two middle ones.</summary>
    public double Median => Quantile(0.5);

    /// <summary>A quantile between the order statistics by definition 7 of the source.</summary>
    /// <remarks>R. J. Hyndman, Y. Fan, "Sample quantiles in statistical packages", Am. Stat. 50(4), 1996.</remarks>
    /// <param name="share">From 0 to 1.</param>
    public double Quantile(double share) => QuantileOf(_sorted, share);

    internal static double QuantileOf(double[] sorted, double share) =>
        SortedArrayStatistics.QuantileCustom(sorted, share, QuantileDefinition.R7);
}
