using System.IO.Compression;
using Parquet;
using Parquet.Schema;
using Rookery.Traces.Measuring;

namespace Rookery.Experiments.Files;

/// <summary>
/// Results as Apache Parquet: the columns of <see cref="SweepCsv"/>, measures as doubles, none where unknown.
/// </summary>
public static class SweepParquet
{
    /// <summary>Writes all results.</summary>
    /// <inheritdoc cref="SweepCsv.Write"/>
    public static async Task WriteAsync(Sweep sweep, IEnumerable<CellResult> cells, Stream stream)
    {
        CellResult[] rows = [.. SweepColumns.InOrder(sweep, cells)];
        DataField<string>[] choices = [.. SweepColumns.ChoicesOf(sweep).Select(name => new DataField<string>(name))];
        var seed = new DataField<long>("seed");
        var outcome = new DataField<string>("outcome");
        DataField<double?>[] measures = [.. MeasureNames.All.Select(m => new DataField<double?>(m.Name))];
        var schema = new ParquetSchema([.. choices, seed, outcome, .. measures]);
        var options = new ParquetOptions
        {
            CompressionMethod = CompressionMethod.Snappy,
            CompressionLevel = CompressionLevel.Fastest,
        };
        ParquetWriter writer = await ParquetWriter.CreateAsync(schema, stream, options).ConfigureAwait(false);
        await using var end = writer.ConfigureAwait(false);
        using ParquetRowGroupWriter group = writer.CreateRowGroup();
        for (int i = 0; i < choices.Length; i++)
        {
            string[] levels = [.. rows.Select(r => sweep.CellAt(r.Cell).Treatment.Levels[i])];
            await group.WriteAsync(choices[i], levels).ConfigureAwait(false);
        }

        await group.WriteAsync<long>(seed, rows.Select(r => sweep.CellAt(r.Cell).Seed).ToArray()).ConfigureAwait(false);
        await group.WriteAsync(outcome, rows.Select(SweepColumns.OutcomeOf).ToArray())
            .ConfigureAwait(false);
        for (int i = 0; i < measures.Length; i++)
        {
            double?[] values =
                [.. rows.Select(r => r.Values[i].HasValue ? r.Values[i].ToDouble() : (double?)null)];
            await group.WriteAsync<double>(measures[i], values).ConfigureAwait(false);
        }

        group.CompleteValidate();
    }
}
