// States a second of the checker beside those of Spin on the same model, in one run, so that ratios hold while the
// machine's speed drifts (needs spin and gcc, see ./test):
//   dotnet run -c Release --project bench/Rookery.Checking.Bench
// States with and without each reduction, the table of docs/checker.md:
//   dotnet run -c Release --project bench/Rookery.Checking.Bench -- reductions
using System.Diagnostics;
using System.Globalization;
using Rookery.Checking;
using Rookery.Checking.Bench;
using Rookery.Checking.Tests.Naive;
using Rookery.Checking.Tests.Spin;

string folder = Path.GetFullPath(Path.Combine("lessons", "deques"));
if (args is ["reductions"])
{
    ReductionTable.Write(folder);
    return;
}

int rounds = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 3;
foreach (var (file, scenario) in BenchScenarios.All)
{
    string text = BenchScenarios.Load(Path.Combine(folder, file), scenario);
    string promela = new PromelaWriter(new PlainCode(text, "bench")).Write(claimsOnce: false);
    double one = 0, two = 0, spin = 0;
    CheckResult plain = null!;
    SpinRun counted = null!;
    for (int round = 0; round < rounds; round++)
    {
        counted = SpinRun.Of(promela, "-O2");
        spin = Math.Max(spin, counted.States / Math.Max(0.01, counted.Seconds));
        (plain, double seconds) = Check(text, new() { Reductions = Reductions.None, ClassifiesProgress = false });
        one = Math.Max(one, plain.States / seconds);
        (_, seconds) = Check(text, new()
        {
            Reductions = Reductions.None,
            ClassifiesProgress = false,
            Run = (count, part) => Parallel.For(0, count, new() { MaxDegreeOfParallelism = 2 }, part),
        });
        two = Math.Max(two, plain.States / seconds);
    }

    var (reduced, _) = Check(text, new() { ClassifiesProgress = false });
    Console.WriteLine(string.Create(
        CultureInfo.InvariantCulture,
        $"{file,-18} {plain.States,10:N0} states (Spin {counted.States - 1:N0}; reduced {reduced.States:N0})  "
        + $"one core {one / 1e6:0.00} M/s  Spin {spin / 1e6:0.00} M/s  ratio {one / spin:0.00}  "
        + $"two cores {two / one:0.00}x  {(double)plain.Bytes / plain.States:0} "
        + $"bytes a state"));
}

double total = 0;
foreach (string path in Directory.EnumerateFiles(folder, "*.dq").Order(StringComparer.Ordinal))
{
    string text = BenchScenarios.WithTwoThieves(File.ReadAllText(path));
    foreach (MemoryModel model in Enum.GetValues<MemoryModel>())
    {
        var (found, seconds) = Check(text, new()
        {
            Memory = model,
            Run = (count, part) => Parallel.For(0, count, part),
        });
        total += seconds;
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{Path.GetFileName(path),-22} {model,-4} {found.Verdict,-8} {found.States,10:N0} states  "
            + $"{seconds:0.00} s"));
    }
}

Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"all together {total:0.0} s"));

static (CheckResult Result, double Seconds) Check(string text, CheckOptions options)
{
    var algorithm = AlgorithmReader.Read("bench", text).OrThrow();
    GC.Collect();
    long start = Stopwatch.GetTimestamp();
    CheckResult result = Checker.Check(algorithm, "bench", options);
    return (result, Stopwatch.GetElapsedTime(start).TotalSeconds);
}
