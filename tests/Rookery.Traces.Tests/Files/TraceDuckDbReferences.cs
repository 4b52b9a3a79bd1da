using DuckDB.NET.Data;

namespace Rookery.Traces.Tests.Files;

/// <summary>Our files against DuckDB, a reader and writer of Parquet that shares no code with ours.</summary>
public sealed class TraceDuckDbReferences
{
    [Fact]
    public void Parquet_OpenedByDuckDb_HasTheSameEvents() => WithFolder(folder =>
    {
        Trace trace = TraceSample.Read("Lawful/leapfrog.csv");
        string path = Path.Combine(folder, "trace.parquet");
        File.WriteAllBytes(path, TraceBytes.Parquet(trace));
        var expected = Enumerable.Range(0, trace.Count).GroupBy(i => Word(trace[i].Kind))
            .Select(g => (g.Key, (long)g.Count())).Order().ToList();
        Assert.Equal(expected, Query(
            $"select kind, count(*) from '{path}' group by kind order by kind collate nocase",
            r => (r.GetString(0), r.GetInt64(1))).Order().ToList());
        Assert.Equal(
            Enumerable.Range(0, trace.Count).Select(i => (trace[i].Time, trace[i].Worker, trace[i].Task)).ToList(),
            Query(
                $"select time, worker, task from '{path}' order by "
                + $"step", r => (r.GetInt64(0), r.GetInt32(1), r.GetInt32(2))));
        Assert.Contains(
            ("scheduler.at-join", "leapfrog"),
            Query(
                $"select decode(key), decode(value) from "
                + $"parquet_kv_metadata('{path}')", r => (r.GetString(0), r.GetString(1))));
    });

    [Theory]
    [InlineData("zstd")]
    [InlineData("snappy")]
    [InlineData("gzip")]
    [InlineData("uncompressed")]
    public void Parquet_WrittenByDuckDb_IsRead(string codec) => WithFolder(folder =>
    {
        Trace trace = TraceSample.Read("Lawful/leapfrog.csv");
        string csv = Path.Combine(folder, "trace.csv");
        string path = Path.Combine(folder, "trace.parquet");
        File.WriteAllLines(
            csv, TraceSample.Text("Lawful/leapfrog.csv").Split('\n').Where(l => !l.StartsWith('#')));
        _ = Query(
            $"copy (select * from read_csv('{csv}')) to '{path}' (format parquet, codec '{codec}', row_group_size "
            + $"2048)",
            r => 0);
        Trace read = TraceBytes.FromParquet(File.ReadAllBytes(path)).WithInputs(trace.Inputs);
        TraceBytes.AssertSame(trace, read);
        Assert.True(Audit.Of(read).IsLawful);
    });

    [Fact]
    public void Parquet_ManyRowsWrittenByDuckDb_AreRead() => WithFolder(folder =>
    {
        string path = Path.Combine(folder, "trace.parquet");
        _ = Query(
            "copy (select (range // 3)::bigint as time, (range % 7)::utinyint as worker, 'work' as kind, "
            + "(range % 1000)::smallint as task, null::integer as other, 12 as line from range(300000)) "
            + $"to '{path}' (format parquet)",
            r => 0);
        Trace trace = TraceBytes.FromParquet(File.ReadAllBytes(path));
        Assert.Equal((300_000, 1_000, 7), (trace.Count, trace.TaskCount, trace.Inputs.Workers));
        Assert.Equal(new TraceEvent(99_999, EventKind.Work, 299_999 % 7, 999, -1, 12), trace[299_999]);
    });

    private static string Word(EventKind kind) => string.Concat(
        kind.ToString().Select((c, i) => char.IsUpper(c) && i > 0 ?
            $"-{char.ToLowerInvariant(c)}" : char.ToLowerInvariant(c).ToString()));

    private static List<T> Query<T>(string sql, Func<DuckDBDataReader, T> row)
    {
        using var connection = new DuckDBConnection("DataSource=:memory:");
        connection.Open();
        using DuckDBCommand command = connection.CreateCommand();
#pragma warning disable CA2100 // The text is the test's own.
        command.CommandText = sql;
#pragma warning restore CA2100
        using DuckDBDataReader reader = command.ExecuteReader();
        var rows = new List<T>();
        while (reader.Read())
            rows.Add(row(reader));
        return rows;
    }

    private static void WithFolder(Action<string> act)
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("rookery-");
        try
        {
            act(folder.FullName);
        }
        finally
        {
            folder.Delete(true);
        }
    }
}
