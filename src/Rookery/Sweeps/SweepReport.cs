using System.Collections.Immutable;
using System.Globalization;
using Rookery.Experiments;
using Rookery.Experiments.Claims;
using Rookery.Experiments.Statistics;
using Rookery.Experiments.Words;
using Rookery.Reports;
using Rookery.Traces.Measuring;

namespace Rookery.Sweeps;

/// <summary>A sweep in words and numbers.</summary>
internal static class SweepReport
{
    /// <summary>Says it.</summary>
    public static Report Of(
        Sweep sweep, ImmutableArray<TreatmentSummary> summaries, NamedMeasure measure, string unit, double confidence,
        ClaimResult? claim)
    {
        var sentences = ImmutableArray.CreateBuilder<string>();
        sentences.Add(
            $"{sweep.Subject.Program.Name} ran {Say.Count(sweep.CellCount, "time")}: "
            + $"{Say.Count(sweep.Treatments.Length, "combination")}, {Say.Count(sweep.SeedCount, "seed")} each.");
        int missing = summaries.Sum(s => s.Missing);
        if (missing > 0)
            sentences.Add($"{Say.Sentence(Say.Count(missing, "run"))} had no {measure.Name}: see the last column.");
        if (sweep.SeedCount > 1 && summaries.All(s => s.Values is null or { StandardDeviation: 0 }))
            sentences.Add("No number varied from seed to seed.");
        if (claim is not null)
        {
            sentences.Add(ClaimWords.English.Reason(claim));
            sentences.Add($"That {ClaimWords.English.Rule(claim.Claim)}, is {VerdictWord(claim.Verdict)}.");
        }

        string percent = string.Create(CultureInfo.InvariantCulture, $"{confidence * 100:0.#} %");
        string[] headings =
        [
            .. sweep.Factors.Select(f => f.ShortName), measure.IsTime ? $"{measure.Name} ({unit})" : measure.Name,
            $"{percent} interval", "median", "least", "most", "runs",
        ];
        int first = sweep.Factors.Length;
        return new(
            sentences.ToImmutable(),
            [
                new([.. headings], [.. summaries.Select(s => Row(s, sweep.SeedCount))],
                    [.. Enumerable.Range(first, headings.Length - first)]),
            ]);
    }

    /// <summary>A verdict in a sentence.</summary>
    public static string VerdictWord(Verdict verdict) => verdict switch
    {
        Verdict.Supported => "supported",
        Verdict.Refuted => "refuted",
        Verdict.Undecided => "undecided",
    };

    private static ImmutableArray<ReportCell> Row(TreatmentSummary summary, int seeds)
    {
        ReportCell[] levels = [.. summary.Treatment.Levels.Select(l => (ReportCell)l)];
        string runs = summary.Missing == 0
            ? Say.Whole(seeds)
            : $"{Say.Whole(seeds - summary.Missing)} of {Say.Whole(seeds)}";
        return summary is { Values: { } values, Interval: { } interval }
            ?
            [
                .. levels, Number(values.Mean), Between(interval), Number(values.Median), Number(values.Min),
                Number(values.Max), runs,
            ]
            : [.. levels, "–", "–", "–", "–", "–", runs];
    }

    private static string Between(Interval interval) => $"{Number(interval.Low)} to {Number(interval.High)}";

    // Counts stay whole; what is not whole has as many decimals as matter beside its size.
    private static string Number(double value) => value == Math.Floor(value) && Math.Abs(value) < 1e15
        ? Say.Whole((Int128)value)
        : Say.Decimal(value, Math.Abs(value) >= 100 ? 1 : Math.Abs(value) >= 10 ? 2 : Math.Abs(value) >= 1 ? 3 : 4);
}
