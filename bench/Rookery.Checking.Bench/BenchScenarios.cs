namespace Rookery.Checking.Bench;

/// <summary>Scenarios large enough to be timed.</summary>
internal static class BenchScenarios
{
    private const string Threads =
        "owner: push(1), push(2), pop(), push(3), pop(); a: steal(), steal(); b: steal(), steal(); c: steal()";

    /// <summary>Files with the threads that are put into them.</summary>
    public static (string File, string Threads)[] All { get; } =
    [
        ("growable-retry.dq", Threads), ("tagged-top.dq", Threads), ("growable-weak.dq", Threads),
    ];

    /// <summary>A file with these threads alone, and with an expectation that keeps no history.</summary>
    public static string Load(string path, string threads)
    {
        var lines = WithoutScenarios(File.ReadAllText(path))
            .Where(line => !line.StartsWith("expect", StringComparison.Ordinal))
            .Append("expect none twice").Append("scenario \"bench\"")
            .Concat(threads.Split("; ").Select(thread => "    thread " + thread));
        return string.Join('\n', lines) + "\n";
    }

    /// <summary>A file with one owner of three operations and two thieves, and all that it expects.</summary>
    public static string WithTwoThieves(string text)
    {
        var lines = WithoutScenarios(text).Append("scenario \"bench\"")
            .Append("    thread owner: push(1), push(2), pop()").Append("    thread thief: steal()")
            .Append("    thread thief2: steal()");
        return string.Join('\n', lines) + "\n";
    }

    private static IEnumerable<string> WithoutScenarios(string text) => text.Split('\n').Where(line =>
        !line.StartsWith("scenario", StringComparison.Ordinal)
        && !line.StartsWith("    thread", StringComparison.Ordinal));
}
