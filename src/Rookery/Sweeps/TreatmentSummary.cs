using System.Collections.Immutable;
using Rookery.Experiments;
using Rookery.Experiments.Statistics;
using Rookery.Traces.Measuring;

namespace Rookery.Sweeps;

/// <summary>What one measure came to under one treatment.</summary>
/// <param name="Treatment">The treatment.</param>
/// <param name="Values">The measure of each run that has it, in the order of the seeds; null when none has.</param>
/// <param name="Interval">The interval of the mean; null when none has it.</param>
/// <param name="Missing">Runs without it: those that starved, or in which there is none.</param>
internal sealed record TreatmentSummary(Treatment Treatment, Sample? Values, Interval? Interval, int Missing)
{
    /// <summary>Summaries of all treatments.</summary>
    public static ImmutableArray<TreatmentSummary> Of(
        Sweep sweep, ImmutableArray<CellResult> cells, NamedMeasure measure, double confidence)
    {
        int at = MeasureNames.All.IndexOf(measure);
        return
        [
            .. sweep.Treatments.Select(treatment =>
            {
                Ratio[] values =
                [
                    .. cells.Where(c => c.Cell % sweep.Treatments.Length == treatment.Index).Select(c => c.Values[at]),
                ];
                double[] known = [.. values.Where(v => v.HasValue).Select(v => v.ToDouble())];
                Sample? sample = known.Length == 0 ? null : new(known);
                return new TreatmentSummary(
                    treatment, sample, sample is null ? null
                    : Experiments.Statistics.Interval.OfMean(sample, confidence),
                    values.Length - known.Length);
            }),
        ];
    }
}
