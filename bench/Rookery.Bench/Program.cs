// Events a second, in one thread, in one process, in turn, so that ratios hold while the machine's speed drifts:
//   dotnet run -c Release --project bench/Rookery.Bench            the simulator
//   dotnet run -c Release --project bench/Rookery.Bench pool 20    the pool of real threads, with that many rounds
//   dotnet run -c Release --project bench/Rookery.Bench opening 5  what a page does with a trace of a million events
//   dotnet run -c Release --project bench/Rookery.Bench sweep 5 400   a sweep, one thread and two; rounds, seeds
//   dotnet run -c Release --project bench/Rookery.Bench forks      10^9 forks, none of them lost
// Prints the best of some rounds of each, with a checksum that a change of behaviour would change.
using System.Diagnostics;
using System.Globalization;
using Rookery.Bench;

if (args is ["pool", ..])
{
    PoolBench.Run(args.Length > 1 ? int.Parse(args[1], CultureInfo.InvariantCulture) : 20);
    return;
}

if (args is ["forks"])
{
    PoolBench.Many();
    return;
}

if (args is ["opening", ..])
{
    OpeningBench.Run(args.Length > 1 ? int.Parse(args[1], CultureInfo.InvariantCulture) : 5);
    return;
}

if (args is ["sweep", ..])
{
    SweepBench.Run(
        args.Length > 1 ? int.Parse(args[1], CultureInfo.InvariantCulture) : 5,
        args.Length > 2 ? int.Parse(args[2], CultureInfo.InvariantCulture) : 400);
    return;
}

int rounds = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 5;
BenchCase[] cases =
[
    new PriorityQueueCase(8),
    new SimulationCase("count, 8 workers, no trace", SimulationCase.Count, 8, isRecorded: false),
    new SimulationCase("count, 8 workers, trace in memory", SimulationCase.Count, 8, isRecorded: true),
    new SimulationCase("fibonacci, 8 workers, no trace", SimulationCase.Fibonacci, 8, isRecorded: false),
    new SimulationCase("count, 1 worker, no trace", SimulationCase.Count, 1, isRecorded: false),
    new SimulationCase("count, 64 workers, no trace", SimulationCase.Count, 64, isRecorded: false),
    new SimulationCase("count, 1024 workers, no trace", SimulationCase.Count, 1024, isRecorded: false),
];

var best = new double[cases.Length];
for (int round = 0; round < rounds; round++)
{
    for (int i = 0; i < cases.Length; i++)
    {
        GC.Collect();
        long before = GC.GetTotalMemory(forceFullCollection: true);
        long start = Stopwatch.GetTimestamp();
        BenchOutcome outcome = cases[i].Run();
        double seconds = Stopwatch.GetElapsedTime(start).TotalSeconds;
        long held = GC.GetTotalMemory(forceFullCollection: true) - before;
        GC.KeepAlive(outcome);
        best[i] = Math.Max(best[i], outcome.Events / seconds);
        if (round == rounds - 1)
        {
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"{cases[i].Name,-36} {best[i] / 1e6,8:0.00} M events/s  {1e9 / best[i],7:0.0} ns  "
                + $"{(double)held / outcome.Events,6:0.0} bytes/event held  checksum {outcome.Checksum}"));
        }
    }
}
