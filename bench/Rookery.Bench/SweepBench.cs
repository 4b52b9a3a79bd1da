using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using Rookery.Experiments;
using Rookery.Programs;
using Rookery.Simulation;
using Rookery.Sweeps;
using Rookery.Terminal;

namespace Rookery.Bench;

/// <summary>A sweep on one thread and on two, in turn; and what keeps the second from doubling the first.</summary>
/// <remarks>
/// Beside the clock, which on a shared machine times the others as well, stand figures that they spoil less: processor
/// time with two threads over that with one (1 when they do not hinder each other), and the part of the time in which
/// all threads stood still for the collector. The checksum is that of all results.
/// </remarks>
internal static class SweepBench
{
    private const int Threads = 2;

    /// <summary>Runs some rounds.</summary>
    /// <param name="rounds">How many.</param>
    /// <param name="seeds">Seeds for each of the two treatments.</param>
    public static void Run(int rounds, int seeds)
    {
        Sweep sweep = SweepOf(seeds);
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{sweep.CellCount} cells of fibonacci.fj, 8 workers; clock and processor in ms"));
        for (int round = 0; round < rounds; round++)
        {
            Took one = Time(sweep, 1), two = Time(sweep, Threads);
            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"clock {one.Clock:0} / {two.Clock:0} = {one.Clock / two.Clock:0.00}  processor {one.Processor:0}, "
                + $"{two.Processor:0} = {two.Processor / one.Processor:0.00}  stood still "
                + $"{100 * one.Paused / one.Clock:0.0}, {100 * two.Paused / two.Clock:0.0} %  "
                + $"collections {one.Collections}, {two.Collections}  "
                + $"allocated {one.Bytes / sweep.CellCount / 1024} kB a cell  "
                + $"checksum {one.Checksum}, {two.Checksum}"));
        }
    }

    private static Took Time(Sweep sweep, int threads)
    {
        using var progress = new ProgressLine(
            new AppConsole(TextWriter.Null, TextWriter.Null), TimeProvider.System, CancellationToken.None);
        GC.Collect();
        TimeSpan processor = Process.GetCurrentProcess().TotalProcessorTime, paused = GC.GetTotalPauseDuration();
        (int collections, long bytes) = (GC.CollectionCount(0), GC.GetTotalAllocatedBytes());
        long start = Stopwatch.GetTimestamp();
        ImmutableArray<CellResult> cells = SweepRunner.Run(sweep, [], threads, null, progress, CancellationToken.None);
        double clock = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        long checksum = cells.Aggregate(17L, (sum, cell) => cell.Values.Aggregate(
            unchecked((sum * 31) + cell.Cell), (part, value) => unchecked((part * 31) + (long)value.Numerator)));
        return new(
            clock, (Process.GetCurrentProcess().TotalProcessorTime - processor).TotalMilliseconds,
            (GC.GetTotalPauseDuration() - paused).TotalMilliseconds, GC.CollectionCount(0) - collections,
            GC.GetTotalAllocatedBytes() - bytes, checksum);
    }

    private static Sweep SweepOf(int seeds)
    {
        const string program = """
            task fib(n)
                if n < 2
                    work 1
                else
                    fork fib(n - 1)
                    call fib(n - 2)
                    join
                    work 1
            start fib(16)
            """;
        var subject = new Subject(
            ProgramReader.Read("fibonacci.fj", program).OrThrow(), TextDataSource.Empty,
            EvaluationLimits.Default, new());
        Setup plain = Setup.Plain.With("machine", "unit").With("workers", "8");
        return Sweep.Of(subject, plain, [Factor.Parse("victim=random,lowest", [])], seeds);
    }

    private readonly record struct Took(
        double Clock, double Processor, double Paused, int Collections, long Bytes, long Checksum);
}
