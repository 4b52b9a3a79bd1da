using Rookery.Files;
using Rookery.Lessons;
using Rookery.Notation;

namespace Rookery.Courses;

/// <summary>The files of a lesson's folder and those below it, and no others.</summary>
/// <param name="folder">The folder.</param>
internal sealed class LessonFolder(string folder) : ILessonFiles
{
    private const int NamesMax = 500;

    private readonly string _root = Path.GetFullPath(folder);

    /// <inheritdoc/>
    public TextReader? Open(string file) => new FolderData(_root).Open(file);

    /// <inheritdoc/>
    public byte[]? Read(string file, int bytesMax)
    {
        if (!FileNames.IsInside(file))
            return null;
        string path = FolderData.PathOf(_root, file);
        if (!File.Exists(path))
            return null;
        using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        if (stream.Length > bytesMax)
            throw new InputException(AppErrors.FileTooLarge(file, bytesMax));
        byte[] bytes = new byte[stream.Length];
        return bytes[..stream.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false)];
    }

    /// <inheritdoc/>
    public IEnumerable<string> Names()
    {
        var near = new EnumerationOptions { RecurseSubdirectories = true, MaxRecursionDepth = 1 };
        return Directory.EnumerateFiles(_root, "*", near).Take(NamesMax)
            .Select(path => Path.GetRelativePath(_root, path).Replace('\\', '/')).Order(StringComparer.Ordinal);
    }
}
