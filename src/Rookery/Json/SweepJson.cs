using System.Collections.Immutable;
using System.Text.Json;
using Rookery.Experiments;
using Rookery.Experiments.Claims;
using Rookery.Experiments.Statistics;
using Rookery.Experiments.Words;
using Rookery.Sweeps;
using Rookery.Traces.Measuring;

namespace Rookery.Json;

/// <summary>What <c>compare --json</c> prints.</summary>
internal static class SweepJson
{
    /// <summary>The object.</summary>
    public static string Of(
        Sweep sweep, ImmutableArray<TreatmentSummary> summaries, NamedMeasure measure, double confidence,
        ClaimResult? claim) => JsonText.Of(json =>
    {
        json.WriteString("program", sweep.Subject.Program.Name);
        json.WriteString("choices", sweep.Plain.ToString());
        json.WriteNumber("firstSeed", sweep.FirstSeed);
        json.WriteNumber("seeds", sweep.SeedCount);
        json.WriteString("measure", measure.Name);
        json.WriteNumber("confidence", confidence);
        json.WriteStartArray("treatments");
        foreach (TreatmentSummary summary in summaries)
            WriteTreatment(json, sweep, summary);
        json.WriteEndArray();
        if (claim is not null)
            WriteClaim(json, claim);
    });

    private static void WriteTreatment(Utf8JsonWriter json, Sweep sweep, TreatmentSummary summary)
    {
        json.WriteStartObject();
        for (int i = 0; i < sweep.Factors.Length; i++)
            json.WriteString(sweep.Factors[i].ShortName, summary.Treatment.Levels[i]);
        json.WriteNumber("runs", summary.Values?.Count ?? 0);
        json.WriteNumber("without", summary.Missing);
        if (summary is { Values: { } values, Interval: { } interval })
        {
            json.WriteNumber("mean", values.Mean);
            WriteInterval(json, "interval", interval);
            json.WriteNumber("median", values.Median);
            json.WriteNumber("least", values.Min);
            json.WriteNumber("most", values.Max);
            json.WriteNumber("deviation", values.StandardDeviation);
        }

        json.WriteEndObject();
    }

    private static void WriteClaim(Utf8JsonWriter json, ClaimResult claim)
    {
        json.WriteStartObject("claim");
        json.WriteString("verdict", SweepReport.VerdictWord(claim.Verdict));
        json.WriteString("reason", ClaimWords.English.Reason(claim));
        if (claim.Difference is { } difference)
        {
            json.WriteNumber("difference", difference.Mean);
            WriteInterval(json, "differenceInterval", claim.DifferenceInterval!.Value);
        }

        if (claim.Share is { } share && claim.ShareInterval is { } interval)
        {
            json.WriteNumber("share", share);
            WriteInterval(json, "shareInterval", interval);
        }

        json.WriteEndObject();
    }

    private static void WriteInterval(Utf8JsonWriter json, string name, Interval interval)
    {
        json.WriteStartArray(name);
        json.WriteNumberValue(interval.Low);
        json.WriteNumberValue(interval.High);
        json.WriteEndArray();
    }
}
