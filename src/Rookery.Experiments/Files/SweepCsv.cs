using System.Globalization;
using CsvHelper;
using Rookery.Traces.Measuring;

namespace Rookery.Experiments.Files;

/// <summary>Results as CSV (RFC 4180, line feeds): a row a run, by treatment and then seed.</summary>
public static class SweepCsv
{
    private static readonly CsvWriterOptions Options = CsvWriterOptions.Default with
    {
        NewLine = "\n",
        FormatProvider = CultureInfo.InvariantCulture,
    };

    /// <summary>Writes all results.</summary>
    /// <param name="sweep">The sweep.</param>
    /// <param name="cells">Its results, in any order.</param>
    /// <param name="stream">Where to; stays open.</param>
    public static void Write(Sweep sweep, IEnumerable<CellResult> cells, Stream stream)
    {
        using CsvWriter csv = CsvWriter.Create(stream, Options, true);
        csv.WriteHeader(
            [.. SweepColumns.ChoicesOf(sweep), "seed", "outcome", .. MeasureNames.All.Select(m => m.Name)]);
        foreach (CellResult cell in SweepColumns.InOrder(sweep, cells))
        {
            (Treatment treatment, long seed) = sweep.CellAt(cell.Cell);
            foreach (string level in treatment.Levels)
                csv.WriteField(level);
            csv.WriteField(seed, default);
            csv.WriteField(SweepColumns.OutcomeOf(cell));
            foreach (Ratio value in cell.Values)
                csv.WriteField(SweepColumns.TextOf(value));
            csv.EndRecord();
        }
    }
}
