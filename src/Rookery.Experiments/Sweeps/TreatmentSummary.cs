using System.Collections.Immutable;
using Rookery.Experiments.Statistics;
using Rookery.Traces.Measuring;

namespace Rookery.Experiments;

/// <summary>What one measure came to under one treatment.</summary>
/// <param name="Treatment">The treatment.</param>
/// <param name="Values">The measure of each run that has it, in the order of the seeds; null when none has.</param>
/// <param name="Interval">The interval of the mean; null when none has it.</param>
/// <param name="Missing">Runs without it: those that starved, or in which there is none.</param>
public sealed record TreatmentSummary(Treatment Treatment, Sample? Values, Interval? Interval, int Missing)
{
    /// <summary>Summaries of all treatments, in their order.</summary>
    /// <param name="sweep">The sweep.</param>
    /// <param name="cells">Results so far, in any order.</param>
    /// <param name="measure">What is summed up.</param>
    /// <param name="confidence">Of the intervals, such as 0.95.</param>
    public static ImmutableArray<TreatmentSummary> Of(
        Sweep sweep, IReadOnlyCollection<CellResult> cells, NamedMeasure measure, double confidence)
    {
        int at = MeasureNames.All.IndexOf(measure);
        var groups = cells.OrderBy(c => c.Cell).ToLookup(c => c.Cell % sweep.Treatments.Length, c => c.Values[at]);
        return
        [
            .. sweep.Treatments.Select(treatment =>
            {
                double[] known = [.. groups[treatment.Index].Where(v => v.HasValue).Select(v => v.ToDouble())];
                return Of(treatment, known, groups[treatment.Index].Count() - known.Length, confidence);
            }),
        ];
    }

    /// <summary>The summary of one treatment.</summary>
    /// <param name="treatment">The treatment.</param>
    /// <param name="known">The measure of each run that has it, in the order of the seeds.</param>
    /// <param name="missing">Runs without it.</param>
    /// <param name="confidence">Of the interval, such as 0.95.</param>
    public static TreatmentSummary Of(
        Treatment treatment, IReadOnlyCollection<double> known, int missing, double confidence)
    {
        Sample? sample = known.Count == 0 ? null : new(known);
        return new(
            treatment, sample, sample is null ? null : Statistics.Interval.OfMean(sample, confidence), missing);
    }
}
