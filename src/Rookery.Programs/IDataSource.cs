namespace Rookery.Programs;

/// <summary>Where the files named in <c>data</c> lines come from: a folder, an upload, a test.</summary>
public interface IDataSource
{
    /// <summary>Opens a file; the caller closes it.</summary>
    /// <param name="file">
    /// Relative to the program's folder, with <c>/</c> between folders; already checked to have no root, drive,
    /// <c>..</c>, scheme or backslash. An implementation must still refuse links that lead out of the folder.
    /// </param>
    /// <returns>Its text, or null when there is no such file.</returns>
    TextReader? Open(string file);
}
