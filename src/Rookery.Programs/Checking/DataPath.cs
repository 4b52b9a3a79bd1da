namespace Rookery.Programs.Checking;

/// <summary>
/// Finds what is wrong with the path in a <c>data</c> line; a program must not read outside its folder.
/// </summary>
internal static class DataPath
{
    /// <summary>The reason why a path is refused, to follow the path in a sentence; null when it is good.</summary>
    public static string? ProblemOf(string path) => path switch
    {
        "" => "names no file",
        _ when path.Any(char.IsControl) => "has a control character",
        _ when path.Contains('\\', StringComparison.Ordinal) => "has a backslash",
        _ when path.StartsWith('/') => "begins at the root",
        _ when path.StartsWith('~') => "begins at a home folder",
        _ when path.Contains(':', StringComparison.Ordinal) => "has a colon, as drives and addresses have",
        _ when path.Split('/').Any(part => part.Trim() is ".." or "." or "") => "has an empty part, . or ..",
        _ when path.Split('/').Any(part => part.EndsWith(' ') || part.EndsWith('.')) =>
            "has a part that ends in a blank or a dot",
        _ => null,
    };
}
