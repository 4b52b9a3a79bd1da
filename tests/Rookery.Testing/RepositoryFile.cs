namespace Rookery.Testing;

/// <summary>Files of the repository that tests hold against the code: documents, demo programs.</summary>
public static class RepositoryFile
{
    /// <summary>The repository's root folder: the nearest above the tests that holds the solution.</summary>
    /// <exception cref="InvalidOperationException">The tests run outside the repository.</exception>
    public static string Root { get; } = FindRoot();

    /// <summary>Full path of a file, from its path below the root with forward slashes.</summary>
    public static string At(string path) => Path.Combine(Root, path.Replace('/', Path.DirectorySeparatorChar));

    private static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "Rookery.slnx")))
            folder = folder.Parent ?? throw new InvalidOperationException("Rookery.slnx is nowhere above the tests.");
        return folder.FullName;
    }
}
