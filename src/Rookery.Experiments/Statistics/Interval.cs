using MathNet.Numerics.Distributions;

namespace Rookery.Experiments.Statistics;

/// <summary>
/// An interval that holds the true value with a stated confidence, were the experiment made again and again.
/// </summary>
/// <param name="Low">The lower end.</param>
/// <param name="High">The upper end.</param>
/// <param name="Confidence">Such as 0.95.</param>
public readonly record struct Interval(double Low, double High, double Confidence)
{
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

    /// <summary>For the ratio of two means, of pairs: see <see cref="RatioBootstrap"/>.</summary>
    /// <param name="upper">What is divided; as many as <paramref name="lower"/>.</param>
    /// <param name="lower">What it is divided by; their mean is not 0.</param>
    /// <param name="confidence">Such as 0.95.</param>
    /// <returns>Null when a resample of the lower numbers has the mean 0: then there is no such interval.</returns>
    public static Interval? OfRatioOfMeans(Sample upper, Sample lower, double confidence) =>
        new RatioBootstrap(upper, lower).ToInterval(confidence);
}
