namespace Rookery.Traces.Tests.Files;

public sealed class TraceFileProperties
{
    [Fact]
    public void Csv_WrittenAndRead_IsTheSameTrace() =>
        TraceBytes.Any.Sample(
            trace => TraceBytes.AssertSame(trace, TraceBytes.FromCsv(TraceBytes.Csv(trace))), iter: 1_000);

    [Fact]
    public void Parquet_WrittenAndRead_IsTheSameTrace() =>
        TraceBytes.Any.Sample(
            trace => TraceBytes.AssertSame(trace, TraceBytes.FromParquet(TraceBytes.Parquet(trace))), iter: 300);

    [Fact]
    public void Files_OfOneTrace_HaveTheSameBytes() =>
        TraceBytes.Any.Sample(
            trace =>
            {
                Trace again = TraceBytes.FromCsv(TraceBytes.Csv(trace));
                Assert.Equal(TraceBytes.Csv(trace), TraceBytes.Csv(trace));
                Assert.Equal(TraceBytes.Parquet(trace), TraceBytes.Parquet(trace));
                Assert.Equal(TraceBytes.Csv(again), TraceBytes.Csv(TraceBytes.FromParquet(TraceBytes.Parquet(again))));
            },
            iter: 100);

    [Fact]
    public void Csv_RowsShuffledWithSteps_IsTheSameTrace() =>
        Gen.Select(TraceBytes.Any, Gen.Int[0, int.MaxValue]).Sample(
            (trace, seed) =>
            {
                // Labels with line breaks would need a CSV reader here, so this trace keeps none.
                Trace plain = TraceBytes.FromCsv(TraceBytes.Csv(Unlabelled(trace)));
                string[] lines = System.Text.Encoding.UTF8.GetString(TraceBytes.Csv(plain)).TrimEnd('\n').Split('\n');
                int header = Array.FindIndex(lines, l => l.StartsWith("step,", StringComparison.Ordinal));
                var shuffled = lines[..(header + 1)].Concat(Shuffle(lines[(header + 1)..], seed));
                TraceBytes.AssertSame(plain, TraceSample.Parse(string.Join('\n', shuffled)));
            },
            iter: 300);

    [Fact]
    public void Parquet_SeveralRowGroups_KeepsAllRows()
    {
        var recorder = new TraceRecorder();
        int count = TraceParquet.RowGroupLength + 1_000;
        for (int i = 0; i < count; i++)
            recorder.Add(new TraceEvent(i / 3, (EventKind)(i % 17), i % 8, i % 1_000, -1, i % 50));
        Trace trace = recorder.Build(new TraceInputs { Workers = 8, Cores = 8 }, TextLabels.None);
        TraceBytes.AssertSame(trace, TraceBytes.FromParquet(TraceBytes.Parquet(trace)));
    }

    [Fact]
    public async Task Read_WithPauses_IsTheSameTraceAndPausesOften()
    {
        var recorder = new TraceRecorder();
        for (int i = 0; i < 20_000; i++)
            recorder.Add(new TraceEvent(i / 3, (EventKind)(i % 17), i % 8, i % 1_000, -1, i % 50));
        Trace trace = recorder.Build(new TraceInputs { Workers = 8, Cores = 8 }, TextLabels.None);
        int pauses = 0;
        using var csv = new MemoryStream();
        TraceCsv.Write(trace, csv);
        csv.Position = 0;
        TraceBytes.AssertSame(trace, await TraceCsv.ReadAsync(csv, Pause));
        Assert.InRange(pauses, 20_000 / 4_096, 20_000 / 1_000);

        pauses = 0;
        using var parquet = new MemoryStream();
        await TraceParquet.WriteAsync(trace, parquet, TestContext.Current.CancellationToken);
        TraceBytes.AssertSame(
            trace, await TraceParquet.ReadAsync(parquet, null, Pause, TestContext.Current.CancellationToken));
        Assert.InRange(pauses, 20_000 / 4_096, 20_000 / 1_000);

        async ValueTask Pause()
        {
            pauses++;
            await Task.Yield();
        }
    }

    private static Trace Unlabelled(Trace trace)
    {
        var recorder = new TraceRecorder();
        for (int i = 0; i < trace.Count; i++)
            recorder.Add(trace[i]);
        return recorder.Build(new TraceInputs(), TextLabels.None);
    }

    private static string[] Shuffle(string[] rows, int seed)
    {
        ulong state = (ulong)seed;
        for (int i = rows.Length - 1; i > 0; i--)
        {
            state = unchecked((state * 6364136223846793005) + 1442695040888963407);
            int j = (int)((state >> 33) % (ulong)(i + 1));
            (rows[i], rows[j]) = (rows[j], rows[i]);
        }

        return rows;
    }
}
