using System.Collections.Concurrent;

namespace Rookery.Checking.Tests.Shipped;

/// <summary>Results of the shipped files, each computed once for all tests that look at it.</summary>
internal static class ShippedResults
{
    private const string WithProgress = "one owner, two thieves";

    private static readonly ConcurrentDictionary<(string, string, MemoryModel), Lazy<CheckResult>> Known = new();

    /// <summary>
    /// The result with reductions; with classes of progress for the sound deques with two thieves.
    /// </summary>
    public static CheckResult Of(string file, string scenario, MemoryModel model) => Known.GetOrAdd(
        (file, scenario, model),
        _ => new(() => Checker.Check(
            Read(file), scenario, new()
            {
                Memory = model,
                ClassifiesProgress = scenario == WithProgress && !file.Contains('/', StringComparison.Ordinal),
            }))).Value;

    /// <summary>The results of all scenarios of a file.</summary>
    public static CheckResult[] Of(string file, MemoryModel model) =>
        [.. Read(file).Scenarios.Select(scenario => Of(file, scenario, model))];

    private static Algorithm Read(string file) => AlgorithmReader.Read(file, ShippedFiles.Read(file)).OrThrow();
}
