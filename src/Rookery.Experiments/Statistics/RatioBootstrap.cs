using Rookery.Notation.Randomness;

namespace Rookery.Experiments.Statistics;

/// <summary>
/// The interval of the ratio of two means, of pairs, by the percentile bootstrap over pairs, in portions.
/// </summary>
/// <remarks>
/// B. Efron, R. J. Tibshirani, "An Introduction to the Bootstrap", 1993, ch. 13. Pairs are drawn with xoshiro256**
/// from a fixed seed, so the interval is a pure function of the numbers, whatever the portions. Mutable, for one
/// thread.
/// </remarks>
public sealed class RatioBootstrap
{
    /// <summary>Resamples; the interval's ends then move by about a hundredth of it from seed to seed.</summary>
    public const int Resamples = 10_000;

    private const ulong Seed = 20_261_125;

    private readonly Sample _upper;
    private readonly Sample _lower;
    private readonly double[] _ratios = new double[Resamples];
    private Xoshiro256StarStar _random = Xoshiro256StarStar.FromSeed(Seed);
    private int _made;
    private bool _isUndefined;

    /// <summary>Stands before the first resample.</summary>
    /// <param name="upper">What is divided; as many as <paramref name="lower"/>.</param>
    /// <param name="lower">What it is divided by; their mean is not 0.</param>
    public RatioBootstrap(Sample upper, Sample lower)
    {
        ArgumentOutOfRangeException.ThrowIfNotEqual(upper.Count, lower.Count);
        (_upper, _lower) = (upper, lower);
    }

    /// <summary>Whether all resamples have been drawn.</summary>
    public bool IsOver => _isUndefined || _made == Resamples;

    /// <summary>Draws some more resamples.</summary>
    /// <param name="resamples">How many at most.</param>
    public void Advance(int resamples)
    {
        for (int i = 0; i < resamples && !IsOver; i++)
        {
            double up = 0, low = 0;
            for (int j = 0; j < _upper.Count; j++)
            {
                int pair = (int)_random.NextBelow((ulong)_upper.Count);
                up += _upper.Values[pair];
                low += _lower.Values[pair];
            }

            if (low == 0)
                _isUndefined = true;
            else
                _ratios[_made++] = up / low;
        }
    }

    /// <summary>The interval. Draws what is left first.</summary>
    /// <param name="confidence">Such as 0.95.</param>
    /// <returns>Null when a resample of the lower numbers has the mean 0: then there is no such interval.</returns>
    public Interval? ToInterval(double confidence)
    {
        Advance(Resamples);
        if (_isUndefined)
            return null;
        double[] sorted = [.. _ratios];
        Array.Sort(sorted);
        double tail = (1 - confidence) / 2;
        return new Interval(Sample.QuantileOf(sorted, tail), Sample.QuantileOf(sorted, 1 - tail), confidence);
    }
}
