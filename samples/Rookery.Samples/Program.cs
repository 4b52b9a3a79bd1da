// Each sample in three ways, with the time of each; and its run on the pool as a trace:
//   dotnet run -c Release --project samples/Rookery.Samples                      all six
//   dotnet run -c Release --project samples/Rookery.Samples tiles tiles.csv      one, and its trace for draw and audit
using System.Diagnostics;
using Rookery.Pool;
using Rookery.Samples;

Sample[] samples =
    [new SortSample(), new SumSample(), new QueensSample(), new MatrixSample(), new TreeSample(), new TilesSample()];
Sample[] asked = args.Length == 0 ? samples : [.. samples.Where(sample => sample.Name == args[0])];
if (asked.Length == 0)
{
    Console.Error.WriteLine(
        $"There is no sample '{args[0]}'. There are {string.Join(", ", samples.Select(s => s.Name))}.");
    return 2;
}

using var pool = new WorkerPool();
foreach (Sample sample in asked)
{
    Show(sample.Name, "alone", sample.Alone);
    Show(sample.Name, "on the pool", () => sample.OnPool(pool));
    Show(sample.Name, "on tasks", sample.OnTasks);
}

if (args.Length > 1)
{
    using var recording = new WorkerPool(new PoolOptions { RecordingCapacity = 1 << 20 });
    asked[0].OnPool(recording);
    using var file = new StreamWriter(args[1]);
    recording.TakeRecording().WriteCsv(file, asked[0].Name);
    Console.WriteLine($"Trace: {args[1]}");
}

return 0;

static void Show(string name, string how, Func<long> run)
{
    long result = run();
    long start = Stopwatch.GetTimestamp();
    if (run() != result)
        throw new InvalidOperationException($"{name} {how} gave two results.");
    Console.WriteLine($"{name,-8} {how,-12} {Stopwatch.GetElapsedTime(start).TotalMilliseconds,9:0.00} ms   result "
        + $"{result}");
}
