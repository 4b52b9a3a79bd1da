namespace Rookery.Traces.Tests.Files;

/// <summary>Traces to bytes and back, and generated traces.</summary>
internal static class TraceBytes
{
    private static readonly Gen<string> Name = Gen.String[Gen.Char["abcdefgXYZ-_.0123456789é"], 1, 12];

    private static readonly Gen<string?> Label = Gen.Frequency(
        (1, Gen.Const(() => (string?)null)),
        (3, Gen.String[Gen.Char["ab,\"'# \n\r\t;é(0)"], 1, 12].Select(s => (string?)s)));

    private static readonly Gen<TraceInputs> Inputs = Gen.Select(
        Gen.String[Gen.Char["ab \"\\\n\t#:é"], 0, 9],
        Gen.String[Gen.Char["task\n\r\t \"\\é#:"], 0, 40],
        Gen.Dictionary(Name, Gen.Long)[0, 4],
        Gen.Dictionary(Name, Gen.String[Gen.Char["ab \"\n\\:"], 0, 5])[0, 4],
        Gen.Dictionary(Name, Gen.Long[0, long.MaxValue])[0, 4],
        Gen.Int[1, 900],
        Gen.Long,
        Gen.Bool,
        (program, source, parameters, options, costs, workers, seed, starved) => new TraceInputs
        {
            Program = program,
            Source = source,
            Maker = program,
            Parameters = Sorted(parameters),
            Scheduler = Sorted(options),
            Machine = Sorted(costs),
            Workers = workers,
            Cores = workers + 1,
            Seed = seed,
            TimeUnit = "ns",
            ClockUncertainty = seed & long.MaxValue,
            Starved = starved,
        });

    /// <summary>Traces of any events, lawful or not, in order of time; each child has one label.</summary>
    public static Gen<Trace> Any { get; } = Gen.Select(
        Inputs,
        Gen.Select(
            Gen.Long[0, 1L << 50], Gen.Int[0, 16], Gen.Int[0, 99], Gen.Int[-1, 99], Gen.Int[-1, 99], Gen.Int[0, 999])
            .List[0, 60],
        Label.Array[100],
        (inputs, rows, labels) =>
        {
            var recorder = new TraceRecorder();
            long time = 0;
            foreach (var (step, kind, worker, task, other, line) in rows)
            {
                time += step;
                recorder.Add(new TraceEvent(time, (EventKind)kind, worker, task, other, line));
            }

            return recorder.Build(inputs, new TextLabels([.. labels]));
        });

    public static byte[] Csv(Trace trace)
    {
        using var stream = new MemoryStream();
        TraceCsv.Write(trace, stream);
        return stream.ToArray();
    }

    public static byte[] Parquet(Trace trace)
    {
        var stream = new MemoryStream();
        TraceParquet.WriteAsync(trace, stream).GetAwaiter().GetResult();
        return stream.ToArray();
    }

    public static Trace FromCsv(byte[] bytes) => TraceCsv.Read(new MemoryStream(bytes));

    public static Trace FromParquet(byte[] bytes) =>
        TraceParquet.ReadAsync(new MemoryStream(bytes)).GetAwaiter().GetResult();

    /// <summary>Asserts that two traces say the same: inputs, events, and the labels that a file can hold.</summary>
    public static void AssertSame(Trace expected, Trace actual)
    {
        TraceInputs none = new();
        Assert.Equal(
            expected.Inputs with { Parameters = none.Parameters, Scheduler = none.Scheduler, Machine = none.Machine },
            actual.Inputs with { Parameters = none.Parameters, Scheduler = none.Scheduler, Machine = none.Machine });
        Assert.Equal(expected.Inputs.Parameters.AsEnumerable(), actual.Inputs.Parameters);
        Assert.Equal(expected.Inputs.Scheduler.AsEnumerable(), actual.Inputs.Scheduler);
        Assert.Equal(expected.Inputs.Machine.AsEnumerable(), actual.Inputs.Machine);
        Assert.Equal(expected.Count, actual.Count);
        bool sawBegin = false;
        for (int step = 0; step < expected.Count; step++)
        {
            TraceEvent item = expected[step];
            Assert.Equal(item, actual[step]);
            if (item.Kind is EventKind.Fork or EventKind.Call && item.Other >= 0)
                Assert.Equal(expected.Labels.LabelOf(item.Other), actual.Labels.LabelOf(item.Other));
            if (item.Kind == EventKind.Begin && !sawBegin && item.Task >= 0)
                Assert.Equal(expected.Labels.LabelOf(item.Task), actual.Labels.LabelOf(item.Task));
            sawBegin |= item.Kind == EventKind.Begin;
        }
    }

    private static System.Collections.Immutable.ImmutableSortedDictionary<string, T> Sorted<T>(
        IEnumerable<KeyValuePair<string, T>> pairs) =>
        System.Collections.Immutable.ImmutableSortedDictionary.CreateRange(StringComparer.Ordinal, pairs);
}
