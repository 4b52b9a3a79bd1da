using MathNet.Numerics.Distributions;
using Rookery.Notation.Randomness;

namespace Rookery.Experiments.Statistics;

/// <summary>
/// An interval that holds the true value with a stated confidence, were the experiment made again and again.
/// </summary>
/// <param name="Low">The lower end.</param>
/// <param name="High">The upper end.</param>
/// <param name="Confidence">Such as 0.95.</param>
public readonly record struct Interval(double Low, double High, double Confidence)
{
    /// <summary>
    /// Resamples of the bootstrap; its ends then move by about a hundredth of the interval from seed to seed.
    /// </summary>
    public const int Resamples = 10_000;

    private const ulong BootstrapSeed = 20_261_125;

    /// <summary>For the mean of a population: mean -+ t(1 - (1 - confidence)/2, n - 1) * s / sqrt(n).</summary>
    /// <remarks>
    /// Student, "The probable error of a mean", Biometrika 6(1), 1908. One number has an interval of no width, and so
    /// have equal numbers: then the interval says only that this experiment does not vary.
    /// </remarks>
    public static Interval OfMean(Sample sample, double confidence)
    {
        if (sample.StandardDeviation == 0)
            return new(sample.Mean, sample.Mean, confidence);
        double t = StudentT.InvCDF(0, 1, sample.Count - 1, 1 - ((1 - confidence) / 2));
        double half = t * sample.StandardDeviation / Math.Sqrt(sample.Count);
        return new(sample.Mean - half, sample.Mean + half, confidence);
    }

    /// <summary>For the ratio of two means, of pairs: the percentile bootstrap over pairs.</summary>
    /// <remarks>
    /// B. Efron, R. J. Tibshirani, "An Introduction to the Bootstrap", 1993, ch. 13. Pairs are drawn with xoshiro256**
    /// from a fixed seed, so the interval is a pure function of the numbers.
    /// </remarks>
    /// <param name="upper">What is divided; as many as <paramref name="lower"/>.</param>
    /// <param name="lower">What it is divided by; their mean is not 0.</param>
    /// <param name="confidence">Such as 0.95.</param>
    /// <returns>Null when a resample of the lower numbers has the mean 0: then there is no such interval.</returns>
    public static Interval? OfRatioOfMeans(Sample upper, Sample lower, double confidence)
    {
        ArgumentOutOfRangeException.ThrowIfNotEqual(upper.Count, lower.Count);
        var random = Xoshiro256StarStar.FromSeed(BootstrapSeed);
        double[] ratios = new double[Resamples];
        for (int i = 0; i < Resamples; i++)
        {
            double up = 0, low = 0;
            for (int j = 0; j < upper.Count; j++)
            {
                int pair = (int)random.NextBelow((ulong)upper.Count);
                up += upper.Values[pair];
                low += lower.Values[pair];
            }

            if (low == 0)
                return null;
            ratios[i] = up / low;
        }

        var drawn = new Sample(ratios);
        double tail = (1 - confidence) / 2;
        return new(drawn.Quantile(tail), drawn.Quantile(1 - tail), confidence);
    }
}
