namespace Rookery.Browser.Tests.Courses;

/// <summary>A folder that goes away afterwards.</summary>
internal sealed class TempFolder : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("rookery-browser-");

    /// <summary>Full path of a file in it.</summary>
    public string this[string name] => Path.Combine(_folder.FullName, name);

    /// <summary>Puts a text file there.</summary>
    public string Put(string name, string text)
    {
        string path = this[name];
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllText(path, text);
        return path;
    }

    /// <inheritdoc/>
    public void Dispose() => _folder.Delete(recursive: true);
}
