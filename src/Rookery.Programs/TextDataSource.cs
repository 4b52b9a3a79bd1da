using System.Collections.Immutable;

namespace Rookery.Programs;

/// <summary>Data files held as text.</summary>
/// <param name="files">Text of each file by its name.</param>
public sealed class TextDataSource(ImmutableSortedDictionary<string, string> files) : IDataSource
{
    /// <summary>No files at all.</summary>
    public static TextDataSource Empty { get; } =
        new(ImmutableSortedDictionary.Create<string, string>(StringComparer.Ordinal));

    /// <summary>One file.</summary>
    public static TextDataSource Of(string file, string text) => new(Empty.Files.Add(file, text));

    private ImmutableSortedDictionary<string, string> Files { get; } = files;

    /// <inheritdoc/>
    public TextReader? Open(string file) => Files.TryGetValue(file, out string? text) ? new StringReader(text) : null;
}
