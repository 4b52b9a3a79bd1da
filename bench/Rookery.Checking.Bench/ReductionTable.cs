using System.Globalization;

namespace Rookery.Checking.Bench;

/// <summary>States of the shipped deques with one owner and two thieves, with and without each reduction.</summary>
internal static class ReductionTable
{
    private static readonly Reductions[] Columns =
    [
        Reductions.All, Reductions.All & ~Reductions.Local, Reductions.All & ~Reductions.Names,
        Reductions.All & ~Reductions.Symmetry, Reductions.All & ~Reductions.Silent, Reductions.Local,
        Reductions.None,
    ];

    /// <summary>Writes the table, a row for each deque and memory model.</summary>
    /// <param name="folder">Where the deques are.</param>
    public static void Write(string folder)
    {
        Console.WriteLine("all, without local, without names, without symmetry, without silent, local alone, none:");
        foreach (string path in Directory.EnumerateFiles(folder, "*.dq").Order(StringComparer.Ordinal))
        {
            var algorithm = AlgorithmReader.Read(
                "bench", BenchScenarios.WithTwoThieves(File.ReadAllText(path))).OrThrow();
            foreach (MemoryModel model in Enum.GetValues<MemoryModel>())
            {
                var cells = Columns.Select(reductions => Checker.Check(algorithm, "bench", new()
                {
                    Memory = model,
                    Reductions = reductions,
                    ClassifiesProgress = false,
                    StatesMax = 2_000_000,
                })).Select(found => (found.Exhausted is null ? "" : ">")
                    + found.States.ToString("N0", CultureInfo.InvariantCulture));
                Console.WriteLine($"{Path.GetFileName(path),-20} {model,-4} {string.Join("  ", cells)}");
            }
        }
    }
}
