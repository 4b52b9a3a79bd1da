namespace Rookery.Checking.Tests.Shipped;

/// <summary>The algorithms and litmus tests that come with Rookery.</summary>
internal static class ShippedFiles
{
    private static readonly string Folder = Path.Combine(AppContext.BaseDirectory, "lessons", "deques");

    /// <summary>All of them, relative to their folder, with / between folders.</summary>
    public static IEnumerable<string> All() => Directory.EnumerateFiles(Folder, "*.dq", SearchOption.AllDirectories)
        .Select(path => Path.GetRelativePath(Folder, path).Replace('\\', '/')).Order(StringComparer.Ordinal);

    public static string Read(string file) => File.ReadAllText(Path.Combine(Folder, file));

    /// <summary>The text with one expectation in the place of its own.</summary>
    public static string WithExpectation(string text, string expectation) =>
        string.Join('\n', text.Split('\n').Where(line => !line.StartsWith("expect", StringComparison.Ordinal)))
        + expectation + "\n";

    /// <summary>The verdict that a file states for a model, in the comment at its top.</summary>
    public static string StatedVerdict(string text, string model)
    {
        string line = text.Split('\n').First(one => one.StartsWith("# verdicts:", StringComparison.Ordinal));
        return line["# verdicts:".Length..].Split(',').Select(one => one.Trim().Split(' '))
            .First(pair => pair[0] == model)[1];
    }
}
