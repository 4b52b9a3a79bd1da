using System.Collections.Immutable;
using Rookery.Checking;
using Rookery.Lab.Documents;

namespace Rookery.Lab.Deques;

/// <summary>The algorithms that the lab carries with it.</summary>
internal static class DequeFiles
{
    private const string Folder = "deques/";

    /// <summary>What is shown first.</summary>
    public const string First = "deques/growable-weak.dq";

    /// <summary>The shipped deques, those with a mistake made on purpose, and litmus tests; each by name.</summary>
    public static ImmutableArray<(string Group, ImmutableArray<string> Files)> Groups { get; } =
    [
        ("whole", Of(name => !name.Contains('/', StringComparison.Ordinal))),
        ("broken", Of(name => name.StartsWith("broken/", StringComparison.Ordinal))),
        ("litmus", Of(name => name.StartsWith("litmus/", StringComparison.Ordinal))),
    ];

    /// <summary>Whether the lab carries a file.</summary>
    public static bool IsShipped(string file) => Groups.Any(group => group.Files.Contains(file));

    /// <summary>A file's name without its folder and its ending.</summary>
    public static string ShortName(string file) =>
        file[(file.LastIndexOf('/') + 1)..].Replace(".dq", "", StringComparison.Ordinal);

    /// <summary>The words about it at the top of its text, without what they say to the lab.</summary>
    public static ImmutableArray<string> About(string text) =>
    [
        .. LineEdits.LinesOf(text).TakeWhile(LineEdits.IsComment).Select(line => line.TrimStart('#', ' '))
            .Where(line => line.Length > 0 && !line.StartsWith("verdicts:", StringComparison.Ordinal)
                && !line.StartsWith("breaks in:", StringComparison.Ordinal)),
    ];

    /// <summary>The first memory model under which the file itself says that something fails; null for none.</summary>
    public static MemoryModel? BrokenUnder(string text)
    {
        foreach (string[] words in Said(text, "# verdicts:").Split(',').Select(one => one.Trim().Split(' ')))
        {
            if (words.Length == 2 && words[1] == "broken" && Enum.TryParse(words[0], true, out MemoryModel model))
                return model;
        }

        return null;
    }

    /// <summary>The scenario in which the file itself says that it fails; empty for the first.</summary>
    public static string BrokenIn(string text) => Said(text, "# breaks in:").Trim();

    private static string Said(string text, string head) =>
        LineEdits.LinesOf(text).FirstOrDefault(one => one.StartsWith(head, StringComparison.Ordinal)) is { } line
            ? line[head.Length..] : "";

    private static ImmutableArray<string> Of(Func<string, bool> isIn) =>
    [
        .. DemoPrograms.NamesOf(".dq").Where(name => name.StartsWith(Folder, StringComparison.Ordinal)
            && isIn(name[Folder.Length..])).Order(StringComparer.Ordinal),
    ];
}
