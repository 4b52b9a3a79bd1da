using Rookery.Notation;

namespace Rookery.Files;

/// <summary>What to say when a file that was asked for is not there.</summary>
internal static class MissingFile
{
    /// <summary>Names looked at for one that was meant.</summary>
    private const int NamesMax = 1_000;

    /// <summary>The error, with a name from the same folder that may have been meant.</summary>
    public static Diagnostic At(string path)
    {
        if (Directory.Exists(path))
            return AppErrors.IsFolder(path);
        string folder = Path.GetDirectoryName(Path.GetFullPath(path)) ?? ".";
        if (!Directory.Exists(folder))
            return AppErrors.NoFile(path, "");
        IEnumerable<string> names = Directory.EnumerateFiles(folder).Take(NamesMax)
            .Select(file => Path.GetFileName(file)).Order(StringComparer.Ordinal);
        string? nearest = Suggestion.Nearest(Path.GetFileName(path), names);
        string shown = nearest is null ? "" : Path.Combine(Path.GetDirectoryName(path) ?? "", nearest);
        return AppErrors.NoFile(path, shown);
    }
}
