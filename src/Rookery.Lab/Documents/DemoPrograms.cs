using System.Collections.Immutable;
using Rookery.Programs;

namespace Rookery.Lab.Documents;

/// <summary>The demo course's programs, which the lab carries with it. All their data is invented.</summary>
internal static class DemoPrograms
{
    private const string Prefix = "demo/";

    /// <summary>What is shown when the lab opens and nothing else was asked for.</summary>
    public const string First = "seabird/count.fj";

    /// <summary>Their names, in the order in which a lecturer would go through them.</summary>
    public static ImmutableArray<string> Names { get; } =
        [.. NamesOf(".fj").OrderBy(name => name != First).ThenBy(name => name, StringComparer.Ordinal)];

    /// <summary>The names of all demo files with an ending, such as <c>.dq</c>.</summary>
    public static IEnumerable<string> NamesOf(string ending) => typeof(DemoPrograms).Assembly
        .GetManifestResourceNames()
        .Where(name => name.StartsWith(Prefix, StringComparison.Ordinal)
            && name.EndsWith(ending, StringComparison.Ordinal))
        .Select(name => name[Prefix.Length..]);

    /// <summary>One of them.</summary>
    /// <returns>The program with its data; null when there is none of that name.</returns>
    public static LabProgram? Find(string name)
    {
        if (TextOf(name) is not { } text)
            return null;
        string folder = name[..(name.LastIndexOf('/') + 1)];
        var data = ImmutableSortedDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        foreach (var declaration in ProgramReader.Read(name, text).Value?.Data ?? [])
        {
            if (TextOf(folder + declaration.File) is { } rows)
                data[declaration.File] = rows;
        }

        return new(name, text, data.ToImmutable());
    }

    /// <summary>The text of a demo file; null when there is none of that name.</summary>
    public static string? TextOf(string name)
    {
        using Stream? stream = typeof(DemoPrograms).Assembly.GetManifestResourceStream(Prefix + name);
        if (stream is null)
            return null;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
