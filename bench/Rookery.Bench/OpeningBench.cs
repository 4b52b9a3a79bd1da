using System.Diagnostics;
using System.Globalization;
using Rookery.Drawing;
using Rookery.Programs;
using Rookery.Simulation;
using Rookery.Traces;
using Rookery.Traces.Measuring;
using Rookery.Traces.Replaying;
using Trace = Rookery.Traces.Trace;

namespace Rookery.Bench;

/// <summary>What a page does with a trace: opens a file of a million events, then draws moment by moment.</summary>
/// <remarks>Least processor time of some rounds, since the machine may be shared, and what a round allocates.</remarks>
internal static class OpeningBench
{
    private static int _rounds = 5;

    public static void Run(int rounds)
    {
        _rounds = rounds;
        Trace trace = Recorded(1 << 20, 8);
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture, $"{trace.Count} events, {trace.TaskCount} tasks, 8 workers"));
        byte[] parquet = ParquetOf(trace);
        byte[] csv = CsvOf(trace);
        for (int round = 0; round < 2; round++)
        {
            Time(
                "read Parquet", () => TraceParquet.ReadAsync(new MemoryStream(parquet)).GetAwaiter().GetResult().Count);
            Time("read CSV", () => TraceCsv.Read(new MemoryStream(csv)).Count);
            Time("measures", () => (int)Measures.Of(trace).Makespan);
            Time("task table", () => TaskTable.From(trace).Count);
            TaskTable tasks = TaskTable.From(trace);
            Time("kept stages", () => new Replay(trace, tasks).At(trace.Count).Step);
            Time("replay with all parts", () => Opened(trace));
            Time("timeline index", () => Ready(trace).Workers);
            Drawings(trace);
        }
    }

    private static TimelineIndex Ready(Trace trace)
    {
        var index = new TimelineIndex(trace);
        while (!index.Advance(20_000))
        {
        }

        return index;
    }

    private static int Opened(Trace trace)
    {
        Replay replay = new ReplayBuilder(trace).Build();
        return (int)(DequeView.LargestQueued(replay) + replay.At(trace.Count / 2).RemainingWork(0));
    }

    private static void Drawings(Trace trace)
    {
        Trace small = Recorded(1 << 14, 16);
        var replay = new Replay(small);
        long scale = DequeView.LargestQueued(replay);
        var options = new DequeOptions { ScaleWork = scale };
        var times = new List<double>();
        long bytes = 0;
        int length = 0;
        int most = Math.Min(small.Count, 10_000);
        for (int step = 1; step <= most; step++)
        {
            long before = GC.GetAllocatedBytesForCurrentThread();
            long start = Stopwatch.GetTimestamp();
            length += SvgWriter.Write(DequeView.Draw(replay, step, "", options)).Length & 1;
            times.Add(Stopwatch.GetElapsedTime(start).TotalMilliseconds);
            bytes += GC.GetAllocatedBytesForCurrentThread() - before;
        }

        times.Sort();
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"deques, 16 workers, {most} steps      median {times[most / 2]:0.000} ms  "
            + $"p95 {times[most * 95 / 100]:0.000} ms  {bytes / most / 1024} KiB a step"));
        Windows(trace);
    }

    private static void Windows(Trace trace)
    {
        long end = trace.Makespan;
        Time("timeline from the trace", () => TimelineView.Draw(trace).ShapeCount);
        TimelineIndex index = Ready(trace);
        var bars = new TimelineBar[5_000];
        foreach (int part in new[] { 1, 10, 1_000, 100_000 })
        {
            long from = part == 1 ? 0 : end / 3;
            long to = Math.Min(end, from + Math.Max(1, end / part));
            Time($"figure of 1/{part}", () => TimelineView.Draw(index, new() { From = from, To = to }).ShapeCount);
            Time($"canvas of 1/{part}", () => index.Fill(from, to, 1_600, 16, bars));
        }
    }

    private static Trace Recorded(int size, int workers)
    {
        string text = SimulationCase.Count.Replace("1 << 22", size.ToString(CultureInfo.InvariantCulture),
            StringComparison.Ordinal);
        BoundProgram program = ProgramReader.Read("bench.fj", text).OrThrow().Bind(BindInputs.Default).OrThrow();
        return Simulator.Record(program, new RunSettings { Workers = workers, Machine = Machine.Unit }).Trace!;
    }

    private static byte[] ParquetOf(Trace trace)
    {
        var stream = new MemoryStream();
        TraceParquet.WriteAsync(trace, stream).GetAwaiter().GetResult();
        return stream.ToArray();
    }

    private static byte[] CsvOf(Trace trace)
    {
        var stream = new MemoryStream();
        TraceCsv.Write(trace, stream);
        return stream.ToArray();
    }

    private static void Time(string name, Func<int> act)
    {
        double best = double.MaxValue;
        long bytes = 0;
        int checksum = 0;
        for (int round = 0; round < _rounds; round++)
        {
            GC.Collect();
            long before = GC.GetTotalAllocatedBytes(precise: true);
            TimeSpan start = Environment.CpuUsage.TotalTime;
            checksum = act();
            best = Math.Min(best, (Environment.CpuUsage.TotalTime - start).TotalMilliseconds);
            bytes = GC.GetTotalAllocatedBytes(precise: true) - before;
        }

        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{name,-36} {best,9:0.00} ms  {bytes / 1024.0 / 1024.0,8:0.0} MiB  checksum {checksum}"));
    }
}
