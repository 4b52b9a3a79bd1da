using System.Text;
using Rookery.Notation;
using Rookery.Programs;

namespace Rookery.Files;

/// <summary>Data files in the folder of a program, and in no other.</summary>
/// <param name="folder">The program's folder.</param>
internal sealed class FolderData(string folder) : IDataSource
{
    /// <summary>The largest data file, 256 MiB: more numbers than a class waits for.</summary>
    public const long BytesMax = 256L << 20;

    private readonly string _root = Path.GetFullPath(folder);

    /// <inheritdoc/>
    /// <exception cref="InputException">A link leads out of the folder, or the file is too large.</exception>
    public TextReader? Open(string file)
    {
        string path = PathOf(_root, file);
        if (!File.Exists(path))
            return null;
        var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read, 1 << 16);
        if (stream.Length > BytesMax)
        {
            stream.Dispose();
            throw new InputException(AppErrors.FileTooLarge(file, BytesMax));
        }

        return new StreamReader(stream, Encoding.UTF8);
    }

    /// <summary>Where a file of a folder lies, for a name that was checked to have no root and no <c>..</c>.</summary>
    /// <exception cref="InputException">A link may lead out of the folder.</exception>
    public static string PathOf(string root, string file)
    {
        string path = root;
        foreach (string part in file.Split('/'))
        {
            path = Path.Combine(path, part);
            if (IsLink(path))
                throw new InputException(AppErrors.DataIsLink(file));
        }

        return path;
    }

    // A link inside of the folder may lead anywhere, so none is followed; links above the program are its owner's.
    private static bool IsLink(string path) =>
        new FileInfo(path).LinkTarget is not null || new DirectoryInfo(path).LinkTarget is not null;
}
