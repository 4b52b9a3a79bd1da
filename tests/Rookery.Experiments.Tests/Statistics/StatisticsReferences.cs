using Rookery.Experiments.Statistics;
using Rookery.Notation.Randomness;

namespace Rookery.Experiments.Tests.Statistics;

/// <summary>The statistics against certified data sets and worked examples.</summary>
public sealed class StatisticsReferences
{
    // NIST Statistical Reference Datasets, univariate summary statistics, NumAcc1 to NumAcc4: certified mean and
    // standard deviation; the numbers are made by the rule in the data files. NumAcc4 in doubles cannot be better than
    // 1e-8, since its inputs are rounded.
    [Theory]
    [InlineData(10_000_002, 1, 0)]
    [InlineData(1.2, 0.1, 1e-14)]
    [InlineData(1_000_000.2, 0.1, 1e-9)]
    [InlineData(10_000_000.2, 0.1, 1e-8)]
    public void Sample_NistNumericalAccuracySets_HaveTheCertifiedValues(double mean, double deviation, double tolerance)
    {
        double[] values = deviation == 1
            ? [10_000_001, 10_000_003, 10_000_002]
            : [mean, .. Enumerable.Range(0, 500).SelectMany(_ => (double[])[mean - 0.1, mean + 0.1])];
        var sample = new Sample(values);
        Assert.Equal(mean, sample.Mean, mean * 1e-15);
        Assert.Equal(deviation, sample.StandardDeviation, tolerance);
    }

    // Student, "The probable error of a mean", Biometrika 6(1), 1908, section IX: additional hours of sleep gained by
    // ten patients with one drug over the other. Mean 1.58; interval at 95 % from 0.7001 to 2.4599 (t = 2.2622, 9
    // degrees of freedom; from memory of the example as general statistics programs print it).
    [Fact]
    public void IntervalOfMean_StudentsSleepData_IsThePublishedOne()
    {
        var interval = Interval.OfMean(new Sample([1.2, 2.4, 1.3, 1.3, 0.0, 1.0, 1.8, 0.8, 4.6, 1.4]), 0.95);
        Assert.Equal(0.7001142, interval.Low, 1e-7);
        Assert.Equal(2.4598858, interval.High, 1e-7);
    }

    // R. J. Hyndman, Y. Fan, "Sample quantiles in statistical packages", Am. Stat. 50(4), 1996, definition 7:
    // position (n - 1) p + 1.
    [Fact]
    public void Quantile_OneToTen_IsByDefinitionSeven()
    {
        var sample = new Sample(Enumerable.Range(1, 10).Select(i => (double)i).Reverse());
        Assert.Equal(3.25, sample.Quantile(0.25), 1e-12);
        Assert.Equal(5.5, sample.Median, 1e-12);
        Assert.Equal(9.1, sample.Quantile(0.9), 1e-12);
    }

    // What a confidence means: of many experiments so many intervals hold the truth. 2,000 experiments of 30 numbers,
    // each the sum of twelve uniform ones (nearly normal, mean 6): the count is binomial, so 93 to 97 % is over four
    // deviations.
    [Fact]
    public void IntervalOfMean_ManyExperiments_HoldsTheTruthAsOftenAsItSays()
    {
        var random = Xoshiro256StarStar.FromSeed(7);
        int held = 0;
        for (int experiment = 0; experiment < 2_000; experiment++)
        {
            double[] values = new double[30];
            for (int i = 0; i < values.Length; i++)
            {
                for (int j = 0; j < 12; j++)
                    values[i] += random.NextBelow(1 << 20) / (double)(1 << 20);
            }

            var interval = Interval.OfMean(new Sample(values), 0.95);
            held += interval.Low <= 6 && interval.High >= 6 ? 1 : 0;
        }

        Assert.InRange(held, 1_860, 1_940);
    }

    // For a denominator that does not vary the ratio's interval is that of the mean, up to the bootstrap's own error.
    [Fact]
    public void IntervalOfRatio_ConstantDenominator_IsNearStudents()
    {
        double[] values = [.. Enumerable.Range(0, 100).Select(i => (double)(i * 37 % 101))];
        var upper = new Sample(values);
        Interval ratio = Interval.OfRatioOfMeans(upper, new Sample(Enumerable.Repeat(10.0, 100)), 0.95)!.Value;
        var mean = Interval.OfMean(upper, 0.95);
        double width = mean.High - mean.Low;
        Assert.Equal(mean.Low / 10, ratio.Low, width / 10 * 0.1);
        Assert.Equal(mean.High / 10, ratio.High, width / 10 * 0.1);
    }

    [Fact]
    public void IntervalOfRatio_SameNumbersTwice_IsTheSame()
    {
        var upper = new Sample([3, 1, 4, 1, 5, 9, 2, 6]);
        var lower = new Sample([2, 7, 1, 8, 2, 8, 1, 8]);
        Assert.Equal(Interval.OfRatioOfMeans(upper, lower, 0.9), Interval.OfRatioOfMeans(upper, lower, 0.9));
    }

    [Fact]
    public void IntervalOfRatio_DenominatorOfZeros_HasNone() =>
        Assert.Null(Interval.OfRatioOfMeans(new Sample([1, 2]), new Sample([0, 0]), 0.95));
}
